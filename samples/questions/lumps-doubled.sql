-- Which lumps doubled their diameter within a year, by more than the error of measuring by hand?
SELECT p.file, p.name, first.number AS lump, first.site, first.tag,
       first.date AS from_date, first.size_mm AS from_mm, last.date AS to_date, last.size_mm AS to_mm
FROM read_parquet('shelf/lumps/**/*.parquet', hive_partitioning = true) first
JOIN read_parquet('shelf/lumps/**/*.parquet', hive_partitioning = true) last
  ON last.pet_id = first.pet_id AND last.file = first.file AND last.number = first.number AND last.kind = 'lump'
 AND last.date > first.date AND last.date <= first.date + INTERVAL 1 YEAR
 AND last.size_mm >= 2 * first.size_mm AND last.low_mm > first.high_mm
JOIN read_parquet('shelf/pets/*.parquet') p ON p.file = first.file
WHERE first.kind = 'lump'
QUALIFY row_number() OVER (PARTITION BY first.file, first.number ORDER BY last.date, first.date DESC) = 1
ORDER BY p.file, lump;
