-- AlterEnum
ALTER TYPE "link_subject" ADD VALUE 'club' BEFORE 'order';
