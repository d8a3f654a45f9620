-- Whose note has had no entry for 60 days, or has lines that were not understood?
WITH unread AS (
  SELECT file, CAST(sum(not_understood) AS BIGINT) AS not_understood
  FROM read_parquet('shelf/entries/**/*.parquet', hive_partitioning = true) GROUP BY file
)
SELECT p.file, p.name, p.last_day, p.today - p.last_day AS days_silent, coalesce(u.not_understood, 0) AS not_understood
FROM read_parquet('shelf/pets/*.parquet') p LEFT JOIN unread u USING (file)
WHERE p.last_day IS NULL OR p.today - p.last_day > 60 OR u.not_understood > 0
ORDER BY days_silent DESC NULLS FIRST, p.file;
