-- Statistics of millions of cases: repairs and open cases get deltas and cells too, so that no question reads them one by one,
-- and cells know more grains and name what tells them apart by one number. Cells are filled anew: what was folded waits as
-- deltas again, so that answers stay right. A replica of the release before goes on taking events beside this schema; it can
-- neither fold nor answer statistics any more, and what it notes of repairs is put right by the recount.

-- What cells are told apart by beside the month; what a grain leaves out is blank.
CREATE TABLE statistics_place (
  tenant_id     text    COLLATE "C" NOT NULL,
  place         integer GENERATED ALWAYS AS IDENTITY,
  grain         text    COLLATE "C" NOT NULL,
  site          text    COLLATE "C" NOT NULL,
  make          text    COLLATE "C" NOT NULL,
  model         text    COLLATE "C" NOT NULL,
  category      text    COLLATE "C" NOT NULL,
  layout        text    COLLATE "C" NOT NULL,
  age_band      text    COLLATE "C" NOT NULL,
  odometer_band text    COLLATE "C" NOT NULL,
  regime        text    COLLATE "C" NOT NULL,
  PRIMARY KEY (tenant_id, place),
  UNIQUE (tenant_id, grain, site, make, model, category, layout, age_band, odometer_band, regime)
);

DROP TABLE statistics_cell;
CREATE TABLE statistics_cell (
  tenant_id text    COLLATE "C" NOT NULL,
  question  text    COLLATE "C" NOT NULL,
  month     date    NOT NULL,
  place     integer NOT NULL,
  countable integer NOT NULL,
  n         bigint  NOT NULL,
  amount    numeric NOT NULL,
  PRIMARY KEY (tenant_id, place, question, month, countable)
);

-- A repair as it went (sign -1) and as it came (sign 1).
CREATE TABLE statistics_repair_delta (
  tenant_id     text    COLLATE "C" NOT NULL,
  delta         bigint  GENERATED ALWAYS AS IDENTITY,
  sign          integer NOT NULL CHECK (sign IN (-1, 1)),
  items         text[]  NOT NULL,
  verified_day  date    NOT NULL,
  returned_day  date,
  site          text    COLLATE "C" NOT NULL,
  day           date    NOT NULL,
  make          text    COLLATE "C" NOT NULL,
  model         text    COLLATE "C" NOT NULL,
  category      text    COLLATE "C" NOT NULL,
  layout        text    COLLATE "C" NOT NULL,
  age_band      text    COLLATE "C" NOT NULL,
  odometer_band text    COLLATE "C" NOT NULL,
  regime        text    COLLATE "C" NOT NULL,
  PRIMARY KEY (tenant_id, delta)
);

-- Folded repairs: proved on a day, come back so many days later; -1 where they did not within the time that counts.
CREATE TABLE statistics_repair_cell (
  tenant_id     text    COLLATE "C" NOT NULL,
  grain         text    COLLATE "C" NOT NULL,
  month         date    NOT NULL,
  item          text    COLLATE "C" NOT NULL,
  verified      date    NOT NULL,
  after         integer NOT NULL,
  site          text    COLLATE "C" NOT NULL,
  make          text    COLLATE "C" NOT NULL,
  model         text    COLLATE "C" NOT NULL,
  category      text    COLLATE "C" NOT NULL,
  layout        text    COLLATE "C" NOT NULL,
  age_band      text    COLLATE "C" NOT NULL,
  odometer_band text    COLLATE "C" NOT NULL,
  regime        text    COLLATE "C" NOT NULL,
  n             bigint  NOT NULL,
  PRIMARY KEY (tenant_id, grain, item, site, make, model, verified, after, month, category, layout, age_band,
               odometer_band, regime)
);
CREATE INDEX statistics_repair_by_proof ON statistics_repair (tenant_id, verified_day);

-- Cases that have not ended; of them no more is counted than this.
CREATE TABLE statistics_open_delta (
  tenant_id text    COLLATE "C" NOT NULL,
  delta     bigint  GENERATED ALWAYS AS IDENTITY,
  sign      integer NOT NULL CHECK (sign IN (-1, 1)),
  site      text    COLLATE "C" NOT NULL,
  day       date    NOT NULL,
  make      text    COLLATE "C" NOT NULL,
  model     text    COLLATE "C" NOT NULL,
  PRIMARY KEY (tenant_id, delta)
);
CREATE TABLE statistics_open_cell (
  tenant_id text    COLLATE "C" NOT NULL,
  site      text    COLLATE "C" NOT NULL,
  day       date    NOT NULL,
  make      text    COLLATE "C" NOT NULL,
  model     text    COLLATE "C" NOT NULL,
  n         bigint  NOT NULL,
  PRIMARY KEY (tenant_id, site, day, make, model)
);

-- What no case is open of any more is removed.
CREATE INDEX statistics_open_cell_empty ON statistics_open_cell (tenant_id, site) WHERE n = 0;

-- The cells of a month are counted anew together; they lie together where they were counted together.
CREATE INDEX statistics_cell_by_month ON statistics_cell USING brin (tenant_id, month) WITH (pages_per_range = 16);
CREATE INDEX statistics_repair_cell_by_month ON statistics_repair_cell USING brin (tenant_id, month)
  WITH (pages_per_range = 16);

DO $$
DECLARE
  name text;
BEGIN
  FOREACH name IN ARRAY ARRAY['statistics_place', 'statistics_cell', 'statistics_repair_delta',
      'statistics_repair_cell', 'statistics_open_delta', 'statistics_open_cell'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', name);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', name);
    EXECUTE format('CREATE POLICY one_tenant ON %I TO ${serviceRole}'
      ' USING (tenant_id = (SELECT current_setting(''axlecause.tenant'')))'
      ' WITH CHECK (tenant_id = (SELECT current_setting(''axlecause.tenant'')))', name);
    EXECUTE format('GRANT SELECT, INSERT, UPDATE, DELETE ON %I TO ${serviceRole}', name);
  END LOOP;
END
$$;

-- A case is open from its first judging until it has ended.
CREATE FUNCTION note_open_case() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'UPDATE' AND OLD.judging <> 'none' AND OLD.status NOT IN ('verified', 'closed') THEN
    INSERT INTO statistics_open_delta (tenant_id, sign, site, day, make, model)
    VALUES (OLD.tenant_id, -1, coalesce(OLD.site, ''), OLD.opened_day, coalesce(OLD.make, 'unknown'),
            coalesce(OLD.model, 'unknown'));
  END IF;
  IF NEW.judging <> 'none' AND NEW.status NOT IN ('verified', 'closed') THEN
    INSERT INTO statistics_open_delta (tenant_id, sign, site, day, make, model)
    VALUES (NEW.tenant_id, 1, coalesce(NEW.site, ''), NEW.opened_day, coalesce(NEW.make, 'unknown'),
            coalesce(NEW.model, 'unknown'));
  END IF;
  RETURN NULL;
END
$$;
CREATE TRIGGER case_opened AFTER INSERT ON case_file
  FOR EACH ROW WHEN (NEW.judging <> 'none') EXECUTE FUNCTION note_open_case();
CREATE TRIGGER case_opened_or_ended AFTER UPDATE ON case_file
  FOR EACH ROW WHEN ((OLD.judging = 'none') <> (NEW.judging = 'none')
                     OR (OLD.status IN ('verified', 'closed')) <> (NEW.status IN ('verified', 'closed'))
                     OR (OLD.site, OLD.opened_day, OLD.make, OLD.model)
                        IS DISTINCT FROM (NEW.site, NEW.opened_day, NEW.make, NEW.model))
  EXECUTE FUNCTION note_open_case();

-- A replica looks across tenants for whatever waits to be folded: this function alone, as the owner.
CREATE POLICY fold_lookup ON statistics_repair_delta FOR SELECT TO CURRENT_USER USING (true);
CREATE POLICY fold_lookup ON statistics_open_delta FOR SELECT TO CURRENT_USER USING (true);
CREATE OR REPLACE FUNCTION tenants_with_deltas() RETURNS TABLE (tenant_id text)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
  SELECT t.tenant_id
    FROM public.tenant t
   WHERE EXISTS (SELECT 1 FROM public.statistics_delta d WHERE d.tenant_id = t.tenant_id)
      OR EXISTS (SELECT 1 FROM public.statistics_repair_delta d WHERE d.tenant_id = t.tenant_id)
      OR EXISTS (SELECT 1 FROM public.statistics_open_delta d WHERE d.tenant_id = t.tenant_id)
   ORDER BY t.tenant_id
$$;

-- What was counted before this migration waits to be folded again; read and written as its owner.
CREATE POLICY backfill ON statistics_case         FOR SELECT TO CURRENT_USER USING (true);
CREATE POLICY backfill ON statistics_repair       FOR SELECT TO CURRENT_USER USING (true);
CREATE POLICY backfill ON statistics_delta        FOR INSERT TO CURRENT_USER WITH CHECK (true);
CREATE POLICY backfill ON statistics_repair_delta FOR INSERT TO CURRENT_USER WITH CHECK (true);
CREATE POLICY backfill ON statistics_open_delta   FOR INSERT TO CURRENT_USER WITH CHECK (true);
TRUNCATE statistics_delta;
INSERT INTO statistics_delta (tenant_id, sign, site, day, make, model, category, layout, age_band, odometer_band, regime,
                              countables, amounts)
SELECT tenant_id, 1, site, day, make, model, category, layout, age_band, odometer_band, regime, countables, amounts
  FROM statistics_case;
INSERT INTO statistics_repair_delta (tenant_id, sign, items, verified_day, returned_day, site, day, make, model, category,
                                     layout, age_band, odometer_band, regime)
SELECT tenant_id, 1, items, verified_day, returned_day, site, day, make, model, category, layout, age_band,
       odometer_band, regime
  FROM statistics_repair;
INSERT INTO statistics_open_delta (tenant_id, sign, site, day, make, model)
SELECT tenant_id, 1, coalesce(site, ''), opened_day, coalesce(make, 'unknown'), coalesce(model, 'unknown')
  FROM case_file
 WHERE judging <> 'none' AND status NOT IN ('verified', 'closed');
DROP POLICY backfill ON statistics_case;
DROP POLICY backfill ON statistics_repair;
DROP POLICY backfill ON statistics_delta;
DROP POLICY backfill ON statistics_repair_delta;
DROP POLICY backfill ON statistics_open_delta;
