-- CreateTable
CREATE TABLE "caution_yeses" (
    "id" TEXT NOT NULL,
    "staff_id" TEXT NOT NULL,
    "season" INTEGER NOT NULL,
    "texts_hash" TEXT NOT NULL,
    "said_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "caution_yeses_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "caution_yeses_staff_id_season_texts_hash_key" ON "caution_yeses"("staff_id", "season", "texts_hash");

-- AddForeignKey
ALTER TABLE "caution_yeses" ADD CONSTRAINT "caution_yeses_staff_id_fkey" FOREIGN KEY ("staff_id") REFERENCES "staff"("id") ON DELETE CASCADE ON UPDATE CASCADE;
