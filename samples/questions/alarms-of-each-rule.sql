-- How often does each rule speak, and how often does nothing follow? For setting thresholds.
-- "Nothing followed" is a finding of at least `watch` without a visit, or another finding of the same rule, in the 60 days after it.
-- It is an upper bound of the false alarms: a note may simply not tell of the visit.
WITH spoken AS (
  SELECT f.file, f.rule, f.level, f.date
  FROM read_parquet('shelf/findings/**/*.parquet', hive_partitioning = true) f
  JOIN read_parquet('shelf/pets/*.parquet') p ON p.file = f.file
  WHERE f.level IN ('watch', 'call', 'urgent') AND f.date <= p.today - INTERVAL 60 DAY
), visits AS (
  SELECT file, date FROM read_parquet('shelf/entries/**/*.parquet', hive_partitioning = true) WHERE entry = 'visit'
), judged AS (
  SELECT s.*,
         EXISTS (SELECT 1 FROM visits v WHERE v.file = s.file AND v.date BETWEEN s.date AND s.date + INTERVAL 60 DAY)
         OR EXISTS (SELECT 1 FROM spoken o WHERE o.file = s.file AND o.rule = s.rule AND o.date > s.date AND o.date <= s.date + INTERVAL 60 DAY) AS followed
  FROM spoken s
), total AS (
  SELECT count(*) AS entries FROM read_parquet('shelf/entries/**/*.parquet', hive_partitioning = true)
)
SELECT rule, count(*) AS findings, count(*) FILTER (level <> 'watch') AS phone,
       round(100.0 * count(*) / any_value(entries), 2) AS per_100_entries,
       round(100.0 * count(*) FILTER (NOT followed) / count(*), 1) AS percent_nothing_followed
FROM judged, total GROUP BY rule ORDER BY findings DESC, rule;
