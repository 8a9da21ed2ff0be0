-- Cells of whole years: what is not asked by month reads a twelfth of the cells. A trigger keeps them beside the cells of the
-- months, so that whoever writes those, a replica of the release before too, leaves the years right.
CREATE TABLE statistics_year_cell (
  tenant_id text    COLLATE "C" NOT NULL,
  place     integer NOT NULL,
  question  text    COLLATE "C" NOT NULL,
  year      date    NOT NULL,
  countable integer NOT NULL,
  n         bigint  NOT NULL,
  amount    numeric NOT NULL,
  PRIMARY KEY (tenant_id, place, question, year, countable)
) WITH (fillfactor = 80);
ALTER TABLE statistics_year_cell ENABLE ROW LEVEL SECURITY;
ALTER TABLE statistics_year_cell FORCE ROW LEVEL SECURITY;
CREATE POLICY one_tenant ON statistics_year_cell TO ${serviceRole}
  USING (tenant_id = (SELECT current_setting('axlecause.tenant')))
  WITH CHECK (tenant_id = (SELECT current_setting('axlecause.tenant')));
GRANT SELECT, INSERT, UPDATE, DELETE ON statistics_year_cell TO ${serviceRole};

-- Cells by day have no years.
CREATE FUNCTION add_new_cells_to_years() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  INSERT INTO statistics_year_cell AS y (tenant_id, place, question, year, countable, n, amount)
  SELECT c.tenant_id, c.place, c.question, date_trunc('year', c.month)::date, c.countable, sum(c.n), sum(c.amount)
    FROM new_cells c
    JOIN statistics_place p ON p.tenant_id = c.tenant_id AND p.place = c.place AND p.grain <> 'daily'
   GROUP BY 1, 2, 3, 4, 5
   ORDER BY 1, 2, 3, 4, 5
  ON CONFLICT (tenant_id, place, question, year, countable)
  DO UPDATE SET n = y.n + excluded.n, amount = y.amount + excluded.amount;
  RETURN NULL;
END
$$;
CREATE FUNCTION add_changed_cells_to_years() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  INSERT INTO statistics_year_cell AS y (tenant_id, place, question, year, countable, n, amount)
  SELECT c.tenant_id, c.place, c.question, date_trunc('year', c.month)::date, c.countable, sum(c.n), sum(c.amount)
    FROM (SELECT tenant_id, place, question, month, countable, n, amount FROM cells_after
           UNION ALL
          SELECT tenant_id, place, question, month, countable, -n, -amount FROM cells_before) c
    JOIN statistics_place p ON p.tenant_id = c.tenant_id AND p.place = c.place AND p.grain <> 'daily'
   GROUP BY 1, 2, 3, 4, 5
  HAVING sum(c.n) <> 0 OR sum(c.amount) <> 0
   ORDER BY 1, 2, 3, 4, 5
  ON CONFLICT (tenant_id, place, question, year, countable)
  DO UPDATE SET n = y.n + excluded.n, amount = y.amount + excluded.amount;
  RETURN NULL;
END
$$;
CREATE TRIGGER cells_added AFTER INSERT ON statistics_cell
  REFERENCING NEW TABLE AS new_cells
  FOR EACH STATEMENT EXECUTE FUNCTION add_new_cells_to_years();
CREATE TRIGGER cells_changed AFTER UPDATE ON statistics_cell
  REFERENCING OLD TABLE AS cells_before NEW TABLE AS cells_after
  FOR EACH STATEMENT EXECUTE FUNCTION add_changed_cells_to_years();

-- What was folded before this migration; read and written as its owner.
CREATE POLICY backfill ON statistics_cell      FOR SELECT TO CURRENT_USER USING (true);
CREATE POLICY backfill ON statistics_place     FOR SELECT TO CURRENT_USER USING (true);
CREATE POLICY backfill ON statistics_year_cell FOR INSERT TO CURRENT_USER WITH CHECK (true);
INSERT INTO statistics_year_cell (tenant_id, place, question, year, countable, n, amount)
SELECT c.tenant_id, c.place, c.question, date_trunc('year', c.month)::date, c.countable, sum(c.n), sum(c.amount)
  FROM statistics_cell c
  JOIN statistics_place p ON p.tenant_id = c.tenant_id AND p.place = c.place AND p.grain <> 'daily'
 GROUP BY 1, 2, 3, 4, 5;
DROP POLICY backfill ON statistics_cell;
DROP POLICY backfill ON statistics_place;
DROP POLICY backfill ON statistics_year_cell;
