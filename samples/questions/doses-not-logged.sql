-- Of which medicines are fewer doses logged than were ordered, on days that the owner wrote something?
-- Orders with an interval of a day or less; a dose written as missed counts as logged.
WITH orders AS (
  SELECT o.file, o.medicine, coalesce(o."from", DATE '1980-01-01') AS from_day, least(coalesce(o.until, p.today), p.today) AS to_day,
         CAST(floor(24 / o.every_hours_to) AS INTEGER) AS a_day
  FROM read_parquet('shelf/orders/**/*.parquet', hive_partitioning = true) o
  JOIN read_parquet('shelf/pets/*.parquet') p ON p.file = o.file
  WHERE o.every_hours_to BETWEEN 1 AND 24 AND NOT o.as_needed
), days AS (
  SELECT DISTINCT file, date FROM read_parquet('shelf/entries/**/*.parquet', hive_partitioning = true) WHERE entry = 'log'
), logged AS (
  SELECT file, medicine, date, count(*) AS doses
  FROM read_parquet('shelf/doses/**/*.parquet', hive_partitioning = true)
  WHERE kind IN ('gave', 'missed') GROUP BY ALL
)
SELECT o.file, o.medicine, o.a_day AS ordered_a_day, count(*) AS days, sum(o.a_day) AS ordered,
       CAST(sum(least(coalesce(l.doses, 0), o.a_day)) AS BIGINT) AS logged
FROM orders o
JOIN days d ON d.file = o.file AND d.date BETWEEN o.from_day AND o.to_day
LEFT JOIN logged l ON l.file = o.file AND l.medicine = o.medicine AND l.date = d.date
GROUP BY ALL HAVING logged < ordered
ORDER BY o.file, o.medicine;
