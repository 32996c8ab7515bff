-- AlterTable
ALTER TABLE "artwork_images" ADD COLUMN     "stored_as" TEXT,
ALTER COLUMN "bytes" DROP NOT NULL;
