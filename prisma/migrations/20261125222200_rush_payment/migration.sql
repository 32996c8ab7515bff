-- The fee of a hard date is a kind of payment of its own. It was asked for as a balance until now.
UPDATE "payments" SET "kind" = 'rush', "reference" = NULL WHERE "kind" = 'balance' AND "reference" = 'rush fee';
