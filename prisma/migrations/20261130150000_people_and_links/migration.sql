-- CreateEnum
CREATE TYPE "session_kind" AS ENUM ('full', 'floor');

-- AlterEnum
ALTER TYPE "link_subject" ADD VALUE 'wall';

-- AlterTable
ALTER TABLE "private_links" ADD COLUMN     "wall_name" TEXT;

-- AlterTable
ALTER TABLE "staff" ADD COLUMN     "floor_code_hash" TEXT,
ADD COLUMN     "is_demo_password" BOOLEAN NOT NULL DEFAULT false;

-- AlterTable
ALTER TABLE "staff_sessions" ADD COLUMN     "device_id" TEXT,
ADD COLUMN     "idle_minutes" INTEGER NOT NULL DEFAULT 30,
ADD COLUMN     "kind" "session_kind" NOT NULL DEFAULT 'full';

-- CreateTable
CREATE TABLE "devices" (
    "id" TEXT NOT NULL,
    "token_hash" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "last_seen_at" TIMESTAMPTZ(3) NOT NULL,
    "floor_name" TEXT,
    "enrolled_at" TIMESTAMPTZ(3),
    "enrolled_by_name" TEXT,

    CONSTRAINT "devices_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "known_devices" (
    "device_id" TEXT NOT NULL,
    "staff_id" TEXT NOT NULL,
    "since" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "known_devices_pkey" PRIMARY KEY ("device_id","staff_id")
);

-- CreateTable
CREATE TABLE "first_owner_codes" (
    "code_hash" TEXT NOT NULL,
    "made_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "first_owner_codes_pkey" PRIMARY KEY ("code_hash")
);

-- CreateIndex
CREATE UNIQUE INDEX "devices_token_hash_key" ON "devices"("token_hash");

-- CreateIndex
CREATE INDEX "known_devices_staff_id_idx" ON "known_devices"("staff_id");

-- CreateIndex
CREATE INDEX "staff_sessions_device_id_idx" ON "staff_sessions"("device_id");

-- AddForeignKey
ALTER TABLE "staff_sessions" ADD CONSTRAINT "staff_sessions_device_id_fkey" FOREIGN KEY ("device_id") REFERENCES "devices"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "known_devices" ADD CONSTRAINT "known_devices_device_id_fkey" FOREIGN KEY ("device_id") REFERENCES "devices"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "known_devices" ADD CONSTRAINT "known_devices_staff_id_fkey" FOREIGN KEY ("staff_id") REFERENCES "staff"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- The published passwords of the demo belong to these four addresses, which nobody else can have.
UPDATE "staff" SET "is_demo_password" = true
WHERE "email" IN ('desk@thistle-yard.example', 'desk2@thistle-yard.example', 'maker@thistle-yard.example', 'owner@thistle-yard.example');

-- Links had no end. Those that are out go on working: two years for an order's, half a year for the others, and never less than 90 days from now.
UPDATE "private_links"
SET "expires_at" = GREATEST(
  "created_at" + CASE WHEN "subject_kind" IN ('order', 'pair') THEN INTERVAL '730 days' ELSE INTERVAL '180 days' END,
  CURRENT_TIMESTAMP + INTERVAL '90 days'
)
WHERE "expires_at" IS NULL;

-- Messages held the keys of working links. A link is made when its message is sent, the links that are out keep their hash.
UPDATE "outbox" SET "data" = "data" - 'token' WHERE "data" ? 'token';
