-- Which signs were noted most in the last 30 days, and in how many pets?
SELECT p.species, s.part, s.sign, s.level, count(*) AS times, count(DISTINCT s.file) AS pets
FROM read_parquet('shelf/signs/**/*.parquet', hive_partitioning = true) s
JOIN read_parquet('shelf/pets/*.parquet') p ON p.file = s.file
WHERE s.sense = 'present' AND s.level IN ('watch', 'call', 'urgent') AND s.date BETWEEN p.today - INTERVAL 30 DAY AND p.today
GROUP BY ALL ORDER BY pets DESC, times DESC, s.part, s.sign, p.species;
