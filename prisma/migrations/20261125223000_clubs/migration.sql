-- CreateTable
CREATE TABLE "clubs" (
    "id" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "customer_id" TEXT NOT NULL,
    "palette" JSONB NOT NULL,
    "wanted_on" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "created_by_name" TEXT NOT NULL,

    CONSTRAINT "clubs_pkey" PRIMARY KEY ("id")
);

-- AlterTable
ALTER TABLE "orders" ADD COLUMN     "club_id" TEXT;

-- AlterTable
ALTER TABLE "pairs" ADD COLUMN     "quote_id" TEXT;

-- Every order so far has one pair, made from the quote of the order.
UPDATE "pairs" SET "quote_id" = (SELECT "quote_id" FROM "orders" WHERE "orders"."id" = "pairs"."order_id");
ALTER TABLE "pairs" ALTER COLUMN "quote_id" SET NOT NULL;

-- AlterTable
ALTER TABLE "quotes" ADD COLUMN     "club_id" TEXT,
ADD COLUMN     "skier_name" TEXT;

-- AlterTable
ALTER TABLE "sheets" ADD COLUMN     "club_id" TEXT,
ADD COLUMN     "skier_name" TEXT;

-- CreateIndex
CREATE UNIQUE INDEX "clubs_number_key" ON "clubs"("number");

-- CreateIndex
CREATE INDEX "clubs_customer_id_idx" ON "clubs"("customer_id");

-- CreateIndex
CREATE INDEX "orders_club_id_idx" ON "orders"("club_id");

-- CreateIndex
CREATE UNIQUE INDEX "pairs_quote_id_key" ON "pairs"("quote_id");

-- CreateIndex
CREATE INDEX "quotes_club_id_idx" ON "quotes"("club_id");

-- CreateIndex
CREATE INDEX "sheets_club_id_idx" ON "sheets"("club_id");

-- AddForeignKey
ALTER TABLE "clubs" ADD CONSTRAINT "clubs_customer_id_fkey" FOREIGN KEY ("customer_id") REFERENCES "customers"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "orders" ADD CONSTRAINT "orders_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "pairs" ADD CONSTRAINT "pairs_quote_id_fkey" FOREIGN KEY ("quote_id") REFERENCES "quotes"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "quotes" ADD CONSTRAINT "quotes_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sheets" ADD CONSTRAINT "sheets_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE SET NULL ON UPDATE CASCADE;
