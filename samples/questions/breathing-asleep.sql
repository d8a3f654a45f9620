-- What is the breathing rate asleep, by species and life stage? One median a pet, so that busy owners do not count more.
WITH of_pet AS (
  SELECT r.file, median(r.value) AS rate, count(*) AS counts
  FROM read_parquet('shelf/readings/**/*.parquet', hive_partitioning = true) r
  WHERE r.what = 'rr' AND r.compared_as = 'asleep' AND r.bound IS NULL
  GROUP BY r.file HAVING count(*) >= 3
)
SELECT p.species, p.life_stage, count(*) AS pets, CAST(sum(counts) AS BIGINT) AS counts, round(median(rate), 1) AS median,
       round(quantile_cont(rate, 0.05), 1) AS p05, round(quantile_cont(rate, 0.95), 1) AS p95
FROM of_pet JOIN read_parquet('shelf/pets/*.parquet') p USING (file)
GROUP BY ALL ORDER BY p.species, p.life_stage;
