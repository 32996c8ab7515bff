-- CreateTable
CREATE TABLE "floor_books" (
    "number" INTEGER NOT NULL,
    "version" TEXT NOT NULL,
    "effective_at" TIMESTAMPTZ(3) NOT NULL,
    "book" JSONB NOT NULL,
    "summary" JSONB NOT NULL,
    "reason" TEXT NOT NULL,
    "approved_by_name" TEXT NOT NULL,
    "approved_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "floor_books_pkey" PRIMARY KEY ("number")
);

-- CreateIndex
CREATE UNIQUE INDEX "floor_books_version_key" ON "floor_books"("version");
