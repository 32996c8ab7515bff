-- DropIndex
DROP INDEX "customers_phone_normalised_key";

-- AlterTable
ALTER TABLE "customers" ADD COLUMN     "merged_into_id" TEXT,
ADD COLUMN     "given_by" TEXT;
UPDATE "customers" SET "given_by" = 'desk';
ALTER TABLE "customers" ALTER COLUMN "given_by" SET NOT NULL;

-- AlterTable
ALTER TABLE "orders" ADD COLUMN     "buyer_address" JSONB,
ADD COLUMN     "buyer_email" TEXT,
ADD COLUMN     "buyer_name" TEXT,
ADD COLUMN     "buyer_phone" TEXT,
ADD COLUMN     "confirmed_at" TIMESTAMPTZ(3),
ADD COLUMN     "confirmed_by_name" TEXT,
ADD COLUMN     "confirmed_how" TEXT,
ADD COLUMN     "visitor_mark" TEXT;

-- AlterTable
ALTER TABLE "quotes" ADD COLUMN     "buyer_address" JSONB,
ADD COLUMN     "buyer_email" TEXT,
ADD COLUMN     "buyer_name" TEXT,
ADD COLUMN     "buyer_phone" TEXT,
ADD COLUMN     "contact_by" TEXT;

-- Until now a quote and an order said whose they are by their customer alone, so the customer of today is who bought.
UPDATE "quotes" SET
  "buyer_name" = c."name", "buyer_email" = c."email", "buyer_phone" = c."phone", "buyer_address" = c."address"
FROM "customers" c WHERE c."id" = "quotes"."customer_id";
UPDATE "quotes" SET "contact_by" = 'desk';
UPDATE "quotes" SET "contact_by" = 'skier' FROM "sheets" s WHERE s."id" = "quotes"."sheet_id" AND s."channel" = 'online' AND "quotes"."club_id" IS NULL;
ALTER TABLE "quotes" ALTER COLUMN "buyer_name" SET NOT NULL;
ALTER TABLE "quotes" ALTER COLUMN "contact_by" SET NOT NULL;

-- Orders took their place when they were accepted and keep it: they count as confirmed since then.
UPDATE "orders" SET
  "buyer_name" = c."name", "buyer_email" = c."email", "buyer_phone" = c."phone", "buyer_address" = c."address"
FROM "customers" c WHERE c."id" = "orders"."customer_id";
UPDATE "orders" SET
  "confirmed_at" = "accepted_at",
  "confirmed_by_name" = "accepted_by_name",
  "confirmed_how" = CASE WHEN "accepted_how" = 'online' THEN 'earlier' ELSE 'desk' END;
ALTER TABLE "orders" ALTER COLUMN "buyer_name" SET NOT NULL;

-- CreateTable
CREATE TABLE "door_budgets" (
    "key" TEXT NOT NULL,
    "points" INTEGER NOT NULL,
    "expire" BIGINT,

    CONSTRAINT "door_budgets_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "retention_rules" (
    "number" INTEGER NOT NULL,
    "rules" JSONB NOT NULL,
    "reason" TEXT NOT NULL,
    "set_by_name" TEXT NOT NULL,
    "set_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "retention_rules_pkey" PRIMARY KEY ("number")
);

-- CreateTable
CREATE TABLE "contact_codes" (
    "id" TEXT NOT NULL,
    "order_id" TEXT NOT NULL,
    "code_hash" TEXT NOT NULL,
    "sent_to" TEXT NOT NULL,
    "sent_at" TIMESTAMPTZ(3) NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "misses" INTEGER NOT NULL,
    "used_at" TIMESTAMPTZ(3),

    CONSTRAINT "contact_codes_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "payment_messages" (
    "id" TEXT NOT NULL,
    "payment_id" TEXT NOT NULL,
    "received_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "payment_messages_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "contact_codes_order_id_sent_at_idx" ON "contact_codes"("order_id", "sent_at");

-- CreateIndex
CREATE INDEX "customers_phone_normalised_idx" ON "customers"("phone_normalised");

-- CreateIndex
CREATE INDEX "customers_merged_into_id_idx" ON "customers"("merged_into_id");

-- CreateIndex
CREATE INDEX "orders_confirmed_at_state_idx" ON "orders"("confirmed_at", "state");

-- AddForeignKey
ALTER TABLE "customers" ADD CONSTRAINT "customers_merged_into_id_fkey" FOREIGN KEY ("merged_into_id") REFERENCES "customers"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "contact_codes" ADD CONSTRAINT "contact_codes_order_id_fkey" FOREIGN KEY ("order_id") REFERENCES "orders"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- Which shops are the demo was known by their sign-ins alone.
INSERT INTO "counters" ("name", "value")
SELECT 'demo', 1 WHERE (SELECT COUNT(*) FROM "staff" WHERE "email" IN ('desk2@thistle-yard.example', 'maker@thistle-yard.example', 'owner@thistle-yard.example')) = 3
ON CONFLICT ("name") DO NOTHING;
