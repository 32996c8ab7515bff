-- CreateSchema
CREATE SCHEMA IF NOT EXISTS "public";

-- CreateEnum
CREATE TYPE "staff_role" AS ENUM ('desk', 'maker', 'owner');

-- CreateEnum
CREATE TYPE "link_subject" AS ENUM ('sheet', 'quote', 'order', 'pair');

-- CreateTable
CREATE TABLE "staff" (
    "id" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "role" "staff_role" NOT NULL,
    "password_hash" TEXT NOT NULL,
    "closed_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "staff_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "staff_sessions" (
    "id" TEXT NOT NULL,
    "staff_id" TEXT NOT NULL,
    "token_hash" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "last_seen_at" TIMESTAMPTZ(3) NOT NULL,
    "revoked_at" TIMESTAMPTZ(3),

    CONSTRAINT "staff_sessions_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "private_links" (
    "id" TEXT NOT NULL,
    "token_hash" TEXT NOT NULL,
    "subject_kind" "link_subject" NOT NULL,
    "subject_id" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "expires_at" TIMESTAMPTZ(3),
    "revoked_at" TIMESTAMPTZ(3),

    CONSTRAINT "private_links_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "rate_counters" (
    "key" TEXT NOT NULL,
    "window_started_at" TIMESTAMPTZ(3) NOT NULL,
    "count" INTEGER NOT NULL,

    CONSTRAINT "rate_counters_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "artworks" (
    "id" TEXT NOT NULL,
    "sheet_id" TEXT,
    "file_name" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "source_type" TEXT NOT NULL,
    "width_px" INTEGER NOT NULL,
    "height_px" INTEGER NOT NULL,
    "uploaded_at" TIMESTAMPTZ(3) NOT NULL,
    "rights" JSONB,
    "rights_at" TIMESTAMPTZ(3),

    CONSTRAINT "artworks_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "artwork_images" (
    "artwork_id" TEXT NOT NULL,
    "size" TEXT NOT NULL,
    "content_type" TEXT NOT NULL,
    "bytes" BYTEA NOT NULL,

    CONSTRAINT "artwork_images_pkey" PRIMARY KEY ("artwork_id","size")
);

-- CreateTable
CREATE TABLE "customers" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT,
    "phone" TEXT,
    "phone_normalised" TEXT,
    "address" JSONB,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "erased_at" TIMESTAMPTZ(3),

    CONSTRAINT "customers_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "orders" (
    "id" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "quote_id" TEXT NOT NULL,
    "customer_id" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "price" JSONB NOT NULL,
    "price_book" TEXT NOT NULL,
    "total_cents" INTEGER NOT NULL,
    "deposit_cents" INTEGER NOT NULL,
    "deposit_paid_at" TIMESTAMPTZ(3),
    "promise_class" TEXT NOT NULL,
    "estimate" JSONB NOT NULL,
    "promised_on" TEXT,
    "clock_started_at" TIMESTAMPTZ(3),
    "accepted_at" TIMESTAMPTZ(3) NOT NULL,
    "accepted_by_name" TEXT NOT NULL,
    "accepted_how" TEXT NOT NULL,
    "customer_specified" JSONB NOT NULL,
    "cancelled_at" TIMESTAMPTZ(3),
    "cancel_reason" TEXT,
    "fee_cents" INTEGER,
    "refund_cents" INTEGER,
    "delivered_at" TIMESTAMPTZ(3),

    CONSTRAINT "orders_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "payments" (
    "id" TEXT NOT NULL,
    "order_id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "cents" INTEGER NOT NULL,
    "method" TEXT,
    "reference" TEXT,
    "requested_at" TIMESTAMPTZ(3) NOT NULL,
    "received_at" TIMESTAMPTZ(3),
    "taken_by_name" TEXT,

    CONSTRAINT "payments_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "pairs" (
    "id" TEXT NOT NULL,
    "order_id" TEXT NOT NULL,
    "serial_number" INTEGER NOT NULL,
    "serial" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "revision" INTEGER NOT NULL,
    "spec" JSONB NOT NULL,
    "spec_hash" TEXT NOT NULL,
    "release_hash" TEXT NOT NULL,
    "skier_name" TEXT NOT NULL,
    "mould" TEXT NOT NULL,
    "proof_state" TEXT NOT NULL,
    "spec_locked_at" TIMESTAMPTZ(3),
    "rights_at" TIMESTAMPTZ(3),
    "rights_needed" BOOLEAN NOT NULL,
    "rights" JSONB,
    "proof_needed" BOOLEAN NOT NULL,
    "proof_at" TIMESTAMPTZ(3),
    "queued_at" TIMESTAMPTZ(3) NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "pairs_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "skis" (
    "id" TEXT NOT NULL,
    "pair_id" TEXT NOT NULL,
    "side" TEXT NOT NULL,
    "serial" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "measured" JSONB,

    CONSTRAINT "skis_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "pair_revisions" (
    "pair_id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "spec" JSONB NOT NULL,
    "spec_hash" TEXT NOT NULL,
    "price" JSONB NOT NULL,
    "reason" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "created_by_name" TEXT NOT NULL,

    CONSTRAINT "pair_revisions_pkey" PRIMARY KEY ("pair_id","revision")
);

-- CreateTable
CREATE TABLE "operations" (
    "id" TEXT NOT NULL,
    "pair_id" TEXT NOT NULL,
    "station" INTEGER NOT NULL,
    "visit" INTEGER NOT NULL,
    "state" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "started_at" TIMESTAMPTZ(3),
    "started_by_name" TEXT,
    "finished_at" TIMESTAMPTZ(3),
    "finished_by_name" TEXT,
    "next_from" TIMESTAMPTZ(3),
    "press" TEXT,

    CONSTRAINT "operations_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "proofs" (
    "id" TEXT NOT NULL,
    "pair_id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "spec_hash" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "note" TEXT,
    "issued_at" TIMESTAMPTZ(3) NOT NULL,
    "issued_by_name" TEXT NOT NULL,
    "answered_at" TIMESTAMPTZ(3),
    "answered_by_name" TEXT,

    CONSTRAINT "proofs_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "travellers" (
    "id" TEXT NOT NULL,
    "pair_id" TEXT NOT NULL,
    "print" INTEGER NOT NULL,
    "pair_revision" INTEGER NOT NULL,
    "spec_hash" TEXT NOT NULL,
    "printed_at" TIMESTAMPTZ(3) NOT NULL,
    "printed_by_name" TEXT NOT NULL,
    "voided_at" TIMESTAMPTZ(3),
    "void_reason" TEXT,

    CONSTRAINT "travellers_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "quotes" (
    "id" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "revision" INTEGER NOT NULL,
    "state" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "sheet_id" TEXT NOT NULL,
    "customer_id" TEXT NOT NULL,
    "answers" JSONB NOT NULL,
    "choices" JSONB NOT NULL,
    "typed" JSONB NOT NULL,
    "spec" JSONB NOT NULL,
    "spec_hash" TEXT NOT NULL,
    "price" JSONB NOT NULL,
    "price_book" TEXT NOT NULL,
    "total_cents" INTEGER NOT NULL,
    "release_hash" TEXT NOT NULL,
    "engine_version" TEXT NOT NULL,
    "fit" JSONB NOT NULL,
    "flag_acks" JSONB NOT NULL,
    "date_range" JSONB NOT NULL,
    "valid_until" TIMESTAMPTZ(3) NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "created_by_name" TEXT NOT NULL,
    "replaces_id" TEXT,
    "change_request" TEXT,
    "withdraw_reason" TEXT,
    "honoured_until" TIMESTAMPTZ(3),
    "honoured_by" TEXT,
    "honour_reason" TEXT,

    CONSTRAINT "quotes_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "events" (
    "seq" BIGSERIAL NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "kind" TEXT NOT NULL,
    "subject_kind" TEXT NOT NULL,
    "subject_id" TEXT NOT NULL,
    "actor_kind" TEXT NOT NULL,
    "actor_id" TEXT,
    "actor_name" TEXT NOT NULL,
    "data" JSONB NOT NULL,

    CONSTRAINT "events_pkey" PRIMARY KEY ("seq")
);

-- CreateTable
CREATE TABLE "outbox" (
    "id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "recipient" TEXT NOT NULL,
    "subject_kind" TEXT NOT NULL,
    "subject_id" TEXT NOT NULL,
    "data" JSONB NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "sent_at" TIMESTAMPTZ(3),

    CONSTRAINT "outbox_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "counters" (
    "name" TEXT NOT NULL,
    "value" INTEGER NOT NULL,

    CONSTRAINT "counters_pkey" PRIMARY KEY ("name")
);

-- CreateTable
CREATE TABLE "catalogue_releases" (
    "hash" TEXT NOT NULL,
    "engine_version" TEXT NOT NULL,
    "catalogue" JSONB NOT NULL,
    "stored_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "catalogue_releases_pkey" PRIMARY KEY ("hash")
);

-- CreateTable
CREATE TABLE "sheets" (
    "id" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "channel" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "fields" JSONB NOT NULL,
    "customer_id" TEXT,
    "phone_normalised" TEXT,
    "lease_holder_id" TEXT,
    "lease_holder_name" TEXT,
    "lease_until" TIMESTAMPTZ(3),
    "call_back_at" TIMESTAMPTZ(3),
    "call_back_reason" TEXT,
    "call_back_phone" TEXT,
    "review_note" TEXT,
    "review_asked_at" TIMESTAMPTZ(3),
    "turned_down_reason" TEXT,
    "opened_by_name" TEXT NOT NULL,
    "opened_at" TIMESTAMPTZ(3) NOT NULL,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "sheets_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "strips" (
    "id" TEXT NOT NULL,
    "species" TEXT NOT NULL,
    "board" TEXT NOT NULL,
    "modulus_mpa" INTEGER NOT NULL,
    "density_kg_m3" INTEGER NOT NULL,
    "width_mm" DOUBLE PRECISION NOT NULL,
    "height_mm" DOUBLE PRECISION NOT NULL,
    "length_mm" INTEGER NOT NULL,
    "grade" TEXT NOT NULL,
    "location" TEXT NOT NULL,
    "measured_at" TIMESTAMPTZ(3) NOT NULL,
    "state" TEXT NOT NULL,
    "held_by_pair_id" TEXT,
    "side" TEXT,
    "position" TEXT,
    "place" TEXT,

    CONSTRAINT "strips_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "lots" (
    "id" TEXT NOT NULL,
    "material" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "quantity" DOUBLE PRECISION NOT NULL,
    "unit" TEXT NOT NULL,
    "location" TEXT NOT NULL,
    "received_at" TIMESTAMPTZ(3) NOT NULL,
    "expires_at" TIMESTAMPTZ(3),

    CONSTRAINT "lots_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "staff_email_key" ON "staff"("email");

-- CreateIndex
CREATE UNIQUE INDEX "staff_sessions_token_hash_key" ON "staff_sessions"("token_hash");

-- CreateIndex
CREATE INDEX "staff_sessions_staff_id_idx" ON "staff_sessions"("staff_id");

-- CreateIndex
CREATE UNIQUE INDEX "private_links_token_hash_key" ON "private_links"("token_hash");

-- CreateIndex
CREATE INDEX "private_links_subject_kind_subject_id_idx" ON "private_links"("subject_kind", "subject_id");

-- CreateIndex
CREATE INDEX "artworks_sheet_id_idx" ON "artworks"("sheet_id");

-- CreateIndex
CREATE UNIQUE INDEX "customers_phone_normalised_key" ON "customers"("phone_normalised");

-- CreateIndex
CREATE INDEX "customers_name_idx" ON "customers"("name");

-- CreateIndex
CREATE UNIQUE INDEX "orders_number_key" ON "orders"("number");

-- CreateIndex
CREATE UNIQUE INDEX "orders_quote_id_key" ON "orders"("quote_id");

-- CreateIndex
CREATE INDEX "orders_state_accepted_at_idx" ON "orders"("state", "accepted_at");

-- CreateIndex
CREATE INDEX "orders_customer_id_idx" ON "orders"("customer_id");

-- CreateIndex
CREATE INDEX "payments_order_id_idx" ON "payments"("order_id");

-- CreateIndex
CREATE UNIQUE INDEX "pairs_serial_number_key" ON "pairs"("serial_number");

-- CreateIndex
CREATE UNIQUE INDEX "pairs_serial_key" ON "pairs"("serial");

-- CreateIndex
CREATE INDEX "pairs_order_id_idx" ON "pairs"("order_id");

-- CreateIndex
CREATE INDEX "pairs_state_idx" ON "pairs"("state");

-- CreateIndex
CREATE UNIQUE INDEX "skis_serial_key" ON "skis"("serial");

-- CreateIndex
CREATE UNIQUE INDEX "skis_pair_id_side_key" ON "skis"("pair_id", "side");

-- CreateIndex
CREATE INDEX "operations_station_state_idx" ON "operations"("station", "state");

-- CreateIndex
CREATE UNIQUE INDEX "operations_pair_id_station_visit_key" ON "operations"("pair_id", "station", "visit");

-- CreateIndex
CREATE UNIQUE INDEX "proofs_pair_id_revision_key" ON "proofs"("pair_id", "revision");

-- CreateIndex
CREATE UNIQUE INDEX "travellers_pair_id_print_key" ON "travellers"("pair_id", "print");

-- CreateIndex
CREATE UNIQUE INDEX "quotes_replaces_id_key" ON "quotes"("replaces_id");

-- CreateIndex
CREATE INDEX "quotes_state_created_at_idx" ON "quotes"("state", "created_at");

-- CreateIndex
CREATE INDEX "quotes_customer_id_idx" ON "quotes"("customer_id");

-- CreateIndex
CREATE INDEX "quotes_sheet_id_idx" ON "quotes"("sheet_id");

-- CreateIndex
CREATE UNIQUE INDEX "quotes_number_revision_key" ON "quotes"("number", "revision");

-- CreateIndex
CREATE INDEX "events_subject_kind_subject_id_seq_idx" ON "events"("subject_kind", "subject_id", "seq");

-- CreateIndex
CREATE INDEX "events_kind_seq_idx" ON "events"("kind", "seq");

-- CreateIndex
CREATE INDEX "outbox_sent_at_created_at_idx" ON "outbox"("sent_at", "created_at");

-- CreateIndex
CREATE INDEX "sheets_state_updated_at_idx" ON "sheets"("state", "updated_at");

-- CreateIndex
CREATE INDEX "sheets_phone_normalised_idx" ON "sheets"("phone_normalised");

-- CreateIndex
CREATE INDEX "sheets_customer_id_idx" ON "sheets"("customer_id");

-- CreateIndex
CREATE INDEX "strips_state_species_idx" ON "strips"("state", "species");

-- CreateIndex
CREATE INDEX "strips_held_by_pair_id_idx" ON "strips"("held_by_pair_id");

-- CreateIndex
CREATE UNIQUE INDEX "lots_material_number_key" ON "lots"("material", "number");

-- AddForeignKey
ALTER TABLE "staff_sessions" ADD CONSTRAINT "staff_sessions_staff_id_fkey" FOREIGN KEY ("staff_id") REFERENCES "staff"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "artworks" ADD CONSTRAINT "artworks_sheet_id_fkey" FOREIGN KEY ("sheet_id") REFERENCES "sheets"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "artwork_images" ADD CONSTRAINT "artwork_images_artwork_id_fkey" FOREIGN KEY ("artwork_id") REFERENCES "artworks"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "orders" ADD CONSTRAINT "orders_quote_id_fkey" FOREIGN KEY ("quote_id") REFERENCES "quotes"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "orders" ADD CONSTRAINT "orders_customer_id_fkey" FOREIGN KEY ("customer_id") REFERENCES "customers"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "payments" ADD CONSTRAINT "payments_order_id_fkey" FOREIGN KEY ("order_id") REFERENCES "orders"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "pairs" ADD CONSTRAINT "pairs_order_id_fkey" FOREIGN KEY ("order_id") REFERENCES "orders"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "pairs" ADD CONSTRAINT "pairs_release_hash_fkey" FOREIGN KEY ("release_hash") REFERENCES "catalogue_releases"("hash") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "skis" ADD CONSTRAINT "skis_pair_id_fkey" FOREIGN KEY ("pair_id") REFERENCES "pairs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "pair_revisions" ADD CONSTRAINT "pair_revisions_pair_id_fkey" FOREIGN KEY ("pair_id") REFERENCES "pairs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "operations" ADD CONSTRAINT "operations_pair_id_fkey" FOREIGN KEY ("pair_id") REFERENCES "pairs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "proofs" ADD CONSTRAINT "proofs_pair_id_fkey" FOREIGN KEY ("pair_id") REFERENCES "pairs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "travellers" ADD CONSTRAINT "travellers_pair_id_fkey" FOREIGN KEY ("pair_id") REFERENCES "pairs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "quotes" ADD CONSTRAINT "quotes_sheet_id_fkey" FOREIGN KEY ("sheet_id") REFERENCES "sheets"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "quotes" ADD CONSTRAINT "quotes_customer_id_fkey" FOREIGN KEY ("customer_id") REFERENCES "customers"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "quotes" ADD CONSTRAINT "quotes_release_hash_fkey" FOREIGN KEY ("release_hash") REFERENCES "catalogue_releases"("hash") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "quotes" ADD CONSTRAINT "quotes_replaces_id_fkey" FOREIGN KEY ("replaces_id") REFERENCES "quotes"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sheets" ADD CONSTRAINT "sheets_customer_id_fkey" FOREIGN KEY ("customer_id") REFERENCES "customers"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "strips" ADD CONSTRAINT "strips_held_by_pair_id_fkey" FOREIGN KEY ("held_by_pair_id") REFERENCES "pairs"("id") ON DELETE SET NULL ON UPDATE CASCADE;
