-- DropIndex
DROP INDEX "skis_pair_id_side_key";

-- AlterTable
ALTER TABLE "operations" ADD COLUMN     "minutes_share" DOUBLE PRECISION,
ADD COLUMN     "side" TEXT;

-- AlterTable
ALTER TABLE "orders" ADD COLUMN     "hard_date_plan_b" TEXT,
ADD COLUMN     "rush_cents" INTEGER,
ADD COLUMN     "slot_lost_at" TIMESTAMPTZ(3),
ADD COLUMN     "slot_lost_reason" TEXT,
ADD COLUMN     "soft_hold_until" TIMESTAMPTZ(3);

-- AlterTable
ALTER TABLE "pairs" ADD COLUMN     "place_minute" INTEGER,
ADD COLUMN     "press_slot_at" TIMESTAMPTZ(3),
ADD COLUMN     "press_slot_press" TEXT;

-- AlterTable
ALTER TABLE "skis" ADD COLUMN     "build" INTEGER NOT NULL DEFAULT 1,
ADD COLUMN     "location" TEXT;

-- CreateTable
CREATE TABLE "floor_changes" (
    "id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "data" JSONB NOT NULL,
    "from_at" TIMESTAMPTZ(3),
    "to_at" TIMESTAMPTZ(3),
    "reason" TEXT NOT NULL,
    "incident_id" TEXT,
    "source" TEXT NOT NULL,
    "cost_cents" INTEGER,
    "made_at" TIMESTAMPTZ(3) NOT NULL,
    "made_by_name" TEXT NOT NULL,
    "withdrawn_at" TIMESTAMPTZ(3),
    "withdrawn_by_name" TEXT,
    "withdraw_reason" TEXT,

    CONSTRAINT "floor_changes_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "incidents" (
    "id" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "input" JSONB NOT NULL,
    "note" TEXT NOT NULL,
    "effect" JSONB NOT NULL,
    "options" JSONB NOT NULL,
    "chosen" TEXT,
    "chosen_reason" TEXT,
    "cost_cents" INTEGER,
    "reported_at" TIMESTAMPTZ(3) NOT NULL,
    "reported_by_name" TEXT NOT NULL,
    "decided_at" TIMESTAMPTZ(3),
    "decided_by_name" TEXT,
    "closed_at" TIMESTAMPTZ(3),
    "closed_by_name" TEXT,

    CONSTRAINT "incidents_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "pair_holds" (
    "id" TEXT NOT NULL,
    "pair_id" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "station" INTEGER NOT NULL,
    "expected_on" TEXT,
    "note" TEXT NOT NULL,
    "incident_id" TEXT,
    "made_at" TIMESTAMPTZ(3) NOT NULL,
    "made_by_name" TEXT NOT NULL,
    "cleared_at" TIMESTAMPTZ(3),
    "cleared_by_name" TEXT,

    CONSTRAINT "pair_holds_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "notices" (
    "id" TEXT NOT NULL,
    "order_id" TEXT NOT NULL,
    "incident_id" TEXT,
    "kind" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "body" TEXT NOT NULL,
    "data" JSONB NOT NULL,
    "drafted_at" TIMESTAMPTZ(3) NOT NULL,
    "drafted_by_name" TEXT NOT NULL,
    "decided_at" TIMESTAMPTZ(3),
    "decided_by_name" TEXT,
    "decided_reason" TEXT,

    CONSTRAINT "notices_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "plan_moves" (
    "id" TEXT NOT NULL,
    "pair_id" TEXT NOT NULL,
    "from_place" INTEGER,
    "to_place" INTEGER,
    "decision_id" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by_name" TEXT NOT NULL,
    "undone_at" TIMESTAMPTZ(3),
    "undone_by_name" TEXT,

    CONSTRAINT "plan_moves_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "floor_changes_withdrawn_at_idx" ON "floor_changes"("withdrawn_at");

-- CreateIndex
CREATE INDEX "floor_changes_incident_id_idx" ON "floor_changes"("incident_id");

-- CreateIndex
CREATE UNIQUE INDEX "incidents_number_key" ON "incidents"("number");

-- CreateIndex
CREATE INDEX "incidents_state_reported_at_idx" ON "incidents"("state", "reported_at");

-- CreateIndex
CREATE INDEX "pair_holds_pair_id_cleared_at_idx" ON "pair_holds"("pair_id", "cleared_at");

-- CreateIndex
CREATE INDEX "pair_holds_incident_id_idx" ON "pair_holds"("incident_id");

-- CreateIndex
CREATE INDEX "notices_state_drafted_at_idx" ON "notices"("state", "drafted_at");

-- CreateIndex
CREATE INDEX "notices_order_id_idx" ON "notices"("order_id");

-- CreateIndex
CREATE INDEX "notices_incident_id_idx" ON "notices"("incident_id");

-- CreateIndex
CREATE INDEX "plan_moves_at_idx" ON "plan_moves"("at");

-- CreateIndex
CREATE INDEX "plan_moves_pair_id_idx" ON "plan_moves"("pair_id");

-- CreateIndex
CREATE INDEX "plan_moves_decision_id_idx" ON "plan_moves"("decision_id");

-- CreateIndex
CREATE UNIQUE INDEX "skis_pair_id_side_build_key" ON "skis"("pair_id", "side", "build");

-- AddForeignKey
ALTER TABLE "floor_changes" ADD CONSTRAINT "floor_changes_incident_id_fkey" FOREIGN KEY ("incident_id") REFERENCES "incidents"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "pair_holds" ADD CONSTRAINT "pair_holds_pair_id_fkey" FOREIGN KEY ("pair_id") REFERENCES "pairs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "pair_holds" ADD CONSTRAINT "pair_holds_incident_id_fkey" FOREIGN KEY ("incident_id") REFERENCES "incidents"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "notices" ADD CONSTRAINT "notices_order_id_fkey" FOREIGN KEY ("order_id") REFERENCES "orders"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "notices" ADD CONSTRAINT "notices_incident_id_fkey" FOREIGN KEY ("incident_id") REFERENCES "incidents"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "plan_moves" ADD CONSTRAINT "plan_moves_pair_id_fkey" FOREIGN KEY ("pair_id") REFERENCES "pairs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
