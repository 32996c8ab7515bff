-- CreateTable
CREATE TABLE "letters" (
    "id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "recipient" TEXT NOT NULL,
    "heading" TEXT NOT NULL,
    "body" TEXT,
    "is_secret" BOOLEAN NOT NULL,
    "subject_kind" TEXT NOT NULL,
    "subject_id" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "tries" INTEGER NOT NULL DEFAULT 0,
    "problem" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "sent_at" TIMESTAMPTZ(3),

    CONSTRAINT "letters_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "letters_state_created_at_idx" ON "letters"("state", "created_at");

-- CreateIndex
CREATE INDEX "letters_subject_kind_subject_id_idx" ON "letters"("subject_kind", "subject_id");
