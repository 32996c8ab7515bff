-- Sidewalls are bonded to the blank before it is milled to thickness, in this order until now: profile 4, sidewalls 5.
-- What was made on that floor takes its new place, a floor that has these stations elsewhere keeps its own.
UPDATE "operations" SET "position" = 0 WHERE "station" = 'sidewalls' AND "position" = 5;
UPDATE "operations" SET "position" = 5 WHERE "station" = 'profile' AND "position" = 4 AND EXISTS (
  SELECT 1 FROM "operations" o WHERE o."pair_id" = "operations"."pair_id" AND o."station" = 'sidewalls' AND o."position" = 0
);
UPDATE "operations" SET "position" = 4 WHERE "station" = 'sidewalls' AND "position" = 0;

-- A glued blank that nobody has milled gets its sidewalls next. One that is milled or being milled gets them as before.
-- Of stations that were visited again the last visit counts.
CREATE VIEW "last_visits" AS SELECT o.* FROM "operations" o WHERE NOT EXISTS (
  SELECT 1 FROM "operations" later WHERE later."pair_id" = o."pair_id" AND later."station" = o."station" AND later."visit" > o."visit"
);
UPDATE "operations" SET "state" = 'ready', "version" = "version" + 1
WHERE "station" = 'sidewalls' AND "position" = 4 AND "state" = 'blocked'
  AND EXISTS (
    SELECT 1 FROM "last_visits" o WHERE o."pair_id" = "operations"."pair_id" AND o."station" = 'core-glue' AND o."state" = 'done'
  );
UPDATE "operations" SET "state" = 'blocked', "version" = "version" + 1
WHERE "station" = 'profile' AND "position" = 5 AND "state" = 'ready'
  AND EXISTS (
    SELECT 1 FROM "last_visits" o WHERE o."pair_id" = "operations"."pair_id" AND o."station" = 'sidewalls' AND o."position" = 4
      AND o."state" <> 'done'
  );
DROP VIEW "last_visits";
