/** The mounds of a log in their order, each found behind the one before: looking through every fact takes a second of a million. */
export const MOUNDS = `
  WITH RECURSIVE found (mound) AS (
    SELECT min(mound) FROM facts
    UNION ALL
    SELECT (SELECT min(mound) FROM facts WHERE facts.mound > found.mound) FROM found WHERE found.mound IS NOT NULL
  )
  SELECT mound FROM found WHERE mound IS NOT NULL`;
