-- Which pets lost more than 5 % of their weight in the last six months?
-- The highest weighing of that time is compared with the last one. Bounds (<4kg) are left out.
WITH weighed AS (
  SELECT r.pet_id, r.date, r.value, p.today
  FROM read_parquet('shelf/readings/**/*.parquet', hive_partitioning = true) r
  JOIN read_parquet('shelf/pets/*.parquet') p USING (pet_id)
  WHERE r.what = 'weight' AND r.bound IS DISTINCT FROM '<' AND r.bound IS DISTINCT FROM '>'
    AND r.date BETWEEN p.today - INTERVAL 6 MONTH AND p.today
), ends AS (
  SELECT pet_id, max(value) AS highest_kg, arg_max(value, date) AS last_kg, max(date) AS last_weighed
  FROM weighed GROUP BY pet_id
)
SELECT p.file, p.name, p.species, highest_kg, last_kg, last_weighed,
       round(100 * (highest_kg - last_kg) / highest_kg, 1) AS percent_lost
FROM ends JOIN read_parquet('shelf/pets/*.parquet') p USING (pet_id)
WHERE last_kg < 0.95 * highest_kg
ORDER BY percent_lost DESC, p.file;
