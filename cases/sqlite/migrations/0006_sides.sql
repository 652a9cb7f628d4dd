-- A released migration never changes: add the next number instead.

-- What was measured without a stage was of neither side of the repair, a vehicle whose number was typed in groups was
-- another one, and what was out of range is found by other rules.
UPDATE cases SET stale = 1;
