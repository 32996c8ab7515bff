-- AlterTable
ALTER TABLE "incidents" ADD COLUMN     "base" JSONB;
