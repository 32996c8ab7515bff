-- AlterEnum
ALTER TYPE "link_subject" ADD VALUE 'answers' BEFORE 'quote';
