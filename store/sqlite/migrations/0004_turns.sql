-- Ticks are in the order of their turns, not of clocks: each device counts on from the greatest
-- that it has seen. Those made before count on from the time, in milliseconds, that they had.

ALTER TABLE tick RENAME COLUMN at TO turn;
