-- Which values of the last 90 days are past the limit that the pet's clinic set for them?
SELECT r.file, r.line, r.date, r.what, r.state, r.written, r.value, r.unit, r.limit_below, r.limit_above
FROM read_parquet('shelf/readings/**/*.parquet', hive_partitioning = true) r
JOIN read_parquet('shelf/pets/*.parquet') p ON p.file = r.file
WHERE r.date BETWEEN p.today - INTERVAL 90 DAY AND p.today
  AND (r.value > r.limit_above OR r.value < r.limit_below)
  AND r.bound IS DISTINCT FROM '~'
ORDER BY r.file, r.date, r.line;
