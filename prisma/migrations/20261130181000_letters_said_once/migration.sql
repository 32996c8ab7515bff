-- What a letter says stands with the letter alone, where new ones are sealed: the copy in the outbox goes.
UPDATE "outbox" SET "data" = "data" - 'body' WHERE "kind" LIKE 'notice-%' AND jsonb_typeof("data") = 'object';
