-- CreateTable
CREATE TABLE "bench_records" (
    "id" TEXT NOT NULL,
    "pair_id" TEXT,
    "serial" TEXT NOT NULL,
    "pair_serial" TEXT NOT NULL,
    "side" TEXT NOT NULL,
    "spec" JSONB NOT NULL,
    "release_hash" TEXT,
    "strips" JSONB,
    "measured" JSONB NOT NULL,
    "version" INTEGER NOT NULL,
    "measured_at" TIMESTAMPTZ(3) NOT NULL,
    "measured_by_name" TEXT NOT NULL,
    "origin" TEXT NOT NULL,

    CONSTRAINT "bench_records_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "reading_decisions" (
    "seq" SERIAL NOT NULL,
    "serial" TEXT NOT NULL,
    "measure" TEXT NOT NULL,
    "value" DOUBLE PRECISION NOT NULL,
    "choice" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "reading_decisions_pkey" PRIMARY KEY ("seq")
);

-- CreateTable
CREATE TABLE "correction_books" (
    "number" INTEGER NOT NULL,
    "version" TEXT NOT NULL,
    "effective_at" TIMESTAMPTZ(3) NOT NULL,
    "corrections" JSONB NOT NULL,
    "summary" JSONB NOT NULL,
    "approved_by_name" TEXT NOT NULL,
    "approved_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "correction_books_pkey" PRIMARY KEY ("number")
);

-- CreateIndex
CREATE UNIQUE INDEX "bench_records_serial_key" ON "bench_records"("serial");

-- CreateIndex
CREATE INDEX "bench_records_pair_id_idx" ON "bench_records"("pair_id");

-- CreateIndex
CREATE INDEX "bench_records_pair_serial_idx" ON "bench_records"("pair_serial");

-- CreateIndex
CREATE INDEX "reading_decisions_serial_measure_seq_idx" ON "reading_decisions"("serial", "measure", "seq");

-- CreateIndex
CREATE UNIQUE INDEX "correction_books_version_key" ON "correction_books"("version");

-- AddForeignKey
ALTER TABLE "bench_records" ADD CONSTRAINT "bench_records_pair_id_fkey" FOREIGN KEY ("pair_id") REFERENCES "pairs"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "bench_records" ADD CONSTRAINT "bench_records_release_hash_fkey" FOREIGN KEY ("release_hash") REFERENCES "catalogue_releases"("hash") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reading_decisions" ADD CONSTRAINT "reading_decisions_serial_fkey" FOREIGN KEY ("serial") REFERENCES "bench_records"("serial") ON DELETE RESTRICT ON UPDATE CASCADE;
