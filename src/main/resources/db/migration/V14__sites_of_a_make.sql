-- Sites are compared among the vehicles of a make, a category or a regime from cells of their own. What was counted before
-- is counted here: the rows of the cases without what waits to be folded. A replica of the release before goes on taking
-- events and answering; it can't fold any more, since it would leave these cells out, so what it notes waits.
LOCK TABLE statistics_cell IN SHARE ROW EXCLUSIVE MODE;

-- Read and written as the owner.
CREATE POLICY backfill ON statistics_case      FOR SELECT TO CURRENT_USER USING (true);
CREATE POLICY backfill ON statistics_countable FOR SELECT TO CURRENT_USER USING (true);
CREATE POLICY backfill ON statistics_place     TO CURRENT_USER USING (true) WITH CHECK (true);
CREATE POLICY backfill ON statistics_cell      TO CURRENT_USER USING (true) WITH CHECK (true);
CREATE POLICY backfill ON statistics_year_cell TO CURRENT_USER USING (true) WITH CHECK (true);

INSERT INTO statistics_place (tenant_id, grain, site, make, model, category, layout, age_band, odometer_band, regime)
SELECT tenant_id, 'stratum-of-make', site, make, '', category, layout, age_band, odometer_band, regime
  FROM statistics_case
 UNION
SELECT tenant_id, 'stratum-of-make', site, make, '', category, layout, age_band, odometer_band, regime
  FROM statistics_delta;

-- The planner knows nothing of the new places; it would loop over them, and sort all cases on the disk.
SET LOCAL enable_nestloop = off;
SET LOCAL enable_mergejoin = off;
SET LOCAL enable_sort = off;
SET LOCAL work_mem = '192MB';
INSERT INTO statistics_cell (tenant_id, question, month, place, countable, n, amount)
SELECT c.tenant_id, k.question, c.month, c.place, c.countable, sum(c.sign), 0
  FROM (SELECT r.tenant_id, r.sign, date_trunc('month', r.day::timestamp)::date AS month, p.place,
               unnest(r.countables) AS countable
          FROM (SELECT tenant_id, 1 AS sign, day, site, make, category, layout, age_band, odometer_band, regime, countables
                  FROM statistics_case
                 UNION ALL
                SELECT tenant_id, -sign, day, site, make, category, layout, age_band, odometer_band, regime, countables
                  FROM statistics_delta) r
          JOIN statistics_place p
            ON p.tenant_id = r.tenant_id AND p.grain = 'stratum-of-make' AND p.site = r.site AND p.make = r.make
               AND p.category = r.category AND p.layout = r.layout AND p.age_band = r.age_band
               AND p.odometer_band = r.odometer_band AND p.regime = r.regime) c
  JOIN statistics_countable k
    ON k.tenant_id = c.tenant_id AND k.countable = c.countable AND k.question = 'outcome'
 GROUP BY 1, 2, 3, 4, 5
HAVING sum(c.sign) <> 0
 ORDER BY 1, 3, 4, 5;

DROP POLICY backfill ON statistics_case;
DROP POLICY backfill ON statistics_countable;
DROP POLICY backfill ON statistics_place;
DROP POLICY backfill ON statistics_cell;
DROP POLICY backfill ON statistics_year_cell;

-- Whoever writes cells says how many grains it knows.
CREATE FUNCTION refuse_fewer_grains() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  known integer := coalesce(nullif(current_setting('axlecause.grains', true), ''), '0')::integer;
BEGIN
  IF known < 13 THEN
    RAISE EXCEPTION 'cells of statistics have 13 grains, and this release knows %; deltas wait for a release that knows all',
      CASE known WHEN 0 THEN 'fewer' ELSE known::text END;
  END IF;
  RETURN NULL;
END
$$;
CREATE TRIGGER all_grains_are_known BEFORE INSERT OR UPDATE ON statistics_cell
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_fewer_grains();
