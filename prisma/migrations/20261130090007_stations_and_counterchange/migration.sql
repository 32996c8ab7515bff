-- A station is known by its id. What the numbers meant on the floor until now is the table below, which is gone again at the end.
CREATE TABLE "station_numbers" ("number" INTEGER PRIMARY KEY, "station" TEXT NOT NULL UNIQUE);
INSERT INTO "station_numbers" ("number", "station") VALUES
  (1, 'release'),
  (2, 'strips'),
  (3, 'core-glue'),
  (4, 'profile'),
  (5, 'sidewalls'),
  (6, 'base-cut'),
  (7, 'edges'),
  (8, 'print'),
  (9, 'kit'),
  (10, 'lay-up'),
  (11, 'press'),
  (12, 'trim'),
  (13, 'finish'),
  (14, 'check');

-- AlterTable
ALTER TABLE "operations" ADD COLUMN "position" INTEGER;
UPDATE "operations" SET "position" = "station";
ALTER TABLE "operations" ALTER COLUMN "position" SET NOT NULL;
ALTER TABLE "operations" ALTER COLUMN "station" SET DATA TYPE TEXT USING "station"::TEXT;
UPDATE "operations" SET "station" = n."station" FROM "station_numbers" n WHERE "operations"."station" = n."number"::TEXT;

-- Holds of one moment keep the order in which they stand: the column is rewritten in place.
CREATE FUNCTION "station_named"("given" INTEGER) RETURNS TEXT LANGUAGE sql AS $body$
  SELECT COALESCE((SELECT n."station" FROM "station_numbers" n WHERE n."number" = $1), $1::TEXT)
$body$;
ALTER TABLE "pair_holds" ALTER COLUMN "station" SET DATA TYPE TEXT USING "station_named"("station");
DROP FUNCTION "station_named"(INTEGER);

-- Stored JSON: numbers under the names below, at any depth. A function is made twice, as only one that exists can call itself,
-- and its body is one statement without an end mark, by which some drivers cut a script into pieces.
CREATE FUNCTION "station_of"("given" JSONB) RETURNS JSONB LANGUAGE sql AS $body$
  SELECT COALESCE((SELECT to_jsonb(n."station") FROM "station_numbers" n WHERE to_jsonb(n."number") = $1), $1)
$body$;
CREATE FUNCTION "with_stations"("given" JSONB) RETURNS JSONB LANGUAGE sql AS $body$ SELECT $1 $body$;
CREATE OR REPLACE FUNCTION "with_stations"("given" JSONB) RETURNS JSONB LANGUAGE sql AS $body$
  SELECT CASE jsonb_typeof($1)
    WHEN 'object' THEN (
      SELECT COALESCE(jsonb_object_agg(field.key, CASE
        WHEN field.key IN ('station', 'fromStation', 'holdsUpStation') THEN "station_of"(field.value)
        WHEN field.key = 'stations' AND jsonb_typeof(field.value) = 'array' THEN (
          SELECT COALESCE(jsonb_agg("station_of"("with_stations"(item.value)) ORDER BY item.place), '[]'::JSONB)
          FROM jsonb_array_elements(field.value) WITH ORDINALITY AS item(value, place)
        )
        ELSE "with_stations"(field.value)
      END), '{}'::JSONB)
      FROM jsonb_each($1) AS field
    )
    WHEN 'array' THEN (
      SELECT COALESCE(jsonb_agg("with_stations"(item.value) ORDER BY item.place), '[]'::JSONB)
      FROM jsonb_array_elements($1) WITH ORDINALITY AS item(value, place)
    )
    ELSE $1
  END
$body$;

UPDATE "floor_changes" SET "data" = "with_stations"("data");
UPDATE "incidents" SET
  "input" = "with_stations"("input"),
  "effect" = "with_stations"("effect"),
  "options" = "with_stations"("options");
UPDATE "events" SET "data" = "with_stations"("data");
UPDATE "events" SET "data" = jsonb_set("data", '{from}', "station_of"("data" -> 'from')) WHERE "kind" = 'rework-started';
UPDATE "orders" SET "estimate" = "with_stations"("estimate");
UPDATE "quotes" SET "date_range" = "with_stations"("date_range");

DROP FUNCTION "with_stations"(JSONB);
DROP FUNCTION "station_of"(JSONB);
DROP TABLE "station_numbers";

-- Letters cut from two base colours and exchanged between the skis are a counterchange, in every stored specification, price and list.
UPDATE "sheets" SET "fields" = replace(replace(replace("fields"::TEXT, '"swap-letters"', '"counterchange"'), '"inlay-swap-letters"', '"inlay-counterchange"'), '"swappedWith"', '"counterchangedWith"')::JSONB WHERE "fields"::TEXT LIKE '%swap%';
UPDATE "quotes" SET "choices" = replace(replace(replace("choices"::TEXT, '"swap-letters"', '"counterchange"'), '"inlay-swap-letters"', '"inlay-counterchange"'), '"swappedWith"', '"counterchangedWith"')::JSONB WHERE "choices"::TEXT LIKE '%swap%';
UPDATE "quotes" SET "spec" = replace(replace(replace("spec"::TEXT, '"swap-letters"', '"counterchange"'), '"inlay-swap-letters"', '"inlay-counterchange"'), '"swappedWith"', '"counterchangedWith"')::JSONB WHERE "spec"::TEXT LIKE '%swap%';
UPDATE "quotes" SET "price" = replace(replace(replace("price"::TEXT, '"swap-letters"', '"counterchange"'), '"inlay-swap-letters"', '"inlay-counterchange"'), '"swappedWith"', '"counterchangedWith"')::JSONB WHERE "price"::TEXT LIKE '%swap%';
UPDATE "orders" SET "price" = replace(replace(replace("price"::TEXT, '"swap-letters"', '"counterchange"'), '"inlay-swap-letters"', '"inlay-counterchange"'), '"swappedWith"', '"counterchangedWith"')::JSONB WHERE "price"::TEXT LIKE '%swap%';
UPDATE "pairs" SET "spec" = replace(replace(replace("spec"::TEXT, '"swap-letters"', '"counterchange"'), '"inlay-swap-letters"', '"inlay-counterchange"'), '"swappedWith"', '"counterchangedWith"')::JSONB WHERE "spec"::TEXT LIKE '%swap%';
UPDATE "pair_revisions" SET "spec" = replace(replace(replace("spec"::TEXT, '"swap-letters"', '"counterchange"'), '"inlay-swap-letters"', '"inlay-counterchange"'), '"swappedWith"', '"counterchangedWith"')::JSONB WHERE "spec"::TEXT LIKE '%swap%';
UPDATE "pair_revisions" SET "price" = replace(replace(replace("price"::TEXT, '"swap-letters"', '"counterchange"'), '"inlay-swap-letters"', '"inlay-counterchange"'), '"swappedWith"', '"counterchangedWith"')::JSONB WHERE "price"::TEXT LIKE '%swap%';
UPDATE "clubs" SET "palette" = replace(replace(replace("palette"::TEXT, '"swap-letters"', '"counterchange"'), '"inlay-swap-letters"', '"inlay-counterchange"'), '"swappedWith"', '"counterchangedWith"')::JSONB WHERE "palette"::TEXT LIKE '%swap%';
UPDATE "bench_records" SET "spec" = replace(replace(replace("spec"::TEXT, '"swap-letters"', '"counterchange"'), '"inlay-swap-letters"', '"inlay-counterchange"'), '"swappedWith"', '"counterchangedWith"')::JSONB WHERE "spec"::TEXT LIKE '%swap%';
UPDATE "incidents" SET "base" = replace(replace(replace("base"::TEXT, '"swap-letters"', '"counterchange"'), '"inlay-swap-letters"', '"inlay-counterchange"'), '"swappedWith"', '"counterchangedWith"')::JSONB WHERE "base"::TEXT LIKE '%swap%';
UPDATE "events" SET "data" = replace(replace(replace("data"::TEXT, '"swap-letters"', '"counterchange"'), '"inlay-swap-letters"', '"inlay-counterchange"'), '"swappedWith"', '"counterchangedWith"')::JSONB WHERE "data"::TEXT LIKE '%swap%';
UPDATE "outbox" SET "data" = replace(replace(replace("data"::TEXT, '"swap-letters"', '"counterchange"'), '"inlay-swap-letters"', '"inlay-counterchange"'), '"swappedWith"', '"counterchangedWith"')::JSONB WHERE "data"::TEXT LIKE '%swap%';
UPDATE "notices" SET "data" = replace(replace(replace("data"::TEXT, '"swap-letters"', '"counterchange"'), '"inlay-swap-letters"', '"inlay-counterchange"'), '"swappedWith"', '"counterchangedWith"')::JSONB WHERE "data"::TEXT LIKE '%swap%';

-- One word for a hard date in rows, events and code.
UPDATE "orders" SET "promise_class" = 'hard-date' WHERE "promise_class" = 'hard';
UPDATE "events" SET "data" = jsonb_set("data", '{class}', '"hard-date"') WHERE "data" ->> 'class' = 'hard';
UPDATE "incidents" SET "effect" = replace("effect"::TEXT, '"promiseClass": "hard"', '"promiseClass": "hard-date"')::JSONB, "options" = replace("options"::TEXT, '"promiseClass": "hard"', '"promiseClass": "hard-date"')::JSONB;
