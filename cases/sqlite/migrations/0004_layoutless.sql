-- A released migration never changes: add the next number instead.

-- Layouts are named after their thermostats, and as long as the name was among a
-- case's words a search for that part found nearly every case. The words can only be
-- made anew from the document, so each row is stale.
UPDATE cases SET stale = 1;

-- Made anew, every row of the index is dead once. By default full-text search copies
-- a part of its index as soon as a tenth of it is dead, here ten times over in the
-- middle of somebody's work; a part that is nearly all dead costs nothing to drop.
INSERT INTO search (search, rank) VALUES ('deletemerge', 90);
