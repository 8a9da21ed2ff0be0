-- Statistics: one row per case that has ended, written in the transaction that judges it. What can be counted of a case
-- has a number; the case lists the numbers. Each change leaves a delta, deltas are folded into cells of few dimensions,
-- and whatever is not folded yet is added when it is read. Nothing here is personal data: the vehicle is a random token.

CREATE TABLE statistics_countable (
  tenant_id text    COLLATE "C" NOT NULL,
  countable integer GENERATED ALWAYS AS IDENTITY,
  question  text    COLLATE "C" NOT NULL,
  code      text    COLLATE "C" NOT NULL,
  action    text    COLLATE "C" NOT NULL,
  necessity text    COLLATE "C" NOT NULL,
  standing  text    COLLATE "C" NOT NULL,
  axle      integer NOT NULL,
  side      text    COLLATE "C" NOT NULL,
  currency  text    COLLATE "C" NOT NULL,
  marks     integer NOT NULL,
  bin       integer NOT NULL,
  PRIMARY KEY (tenant_id, countable),
  UNIQUE (tenant_id, question, code, action, necessity, standing, axle, side, currency, marks, bin)
);

CREATE TABLE statistics_case (
  tenant_id     text        COLLATE "C" NOT NULL,
  reference     text        COLLATE "C" NOT NULL,
  site          text        COLLATE "C" NOT NULL,
  day           date        NOT NULL,
  make          text        COLLATE "C" NOT NULL,
  model         text        COLLATE "C" NOT NULL,
  category      text        COLLATE "C" NOT NULL,
  layout        text        COLLATE "C" NOT NULL,
  age_band      text        COLLATE "C" NOT NULL,
  odometer_band text        COLLATE "C" NOT NULL,
  regime        text        COLLATE "C" NOT NULL,
  countables    integer[]   NOT NULL,
  amounts       numeric[]   NOT NULL,
  opened        timestamptz NOT NULL,
  axles         integer[]   NOT NULL,
  vehicle       text        COLLATE "C",
  previous_case text        COLLATE "C",
  PRIMARY KEY (tenant_id, reference)
);
CREATE INDEX statistics_case_by_site ON statistics_case (tenant_id, site, day);
CREATE INDEX statistics_case_by_vehicle ON statistics_case (tenant_id, make, model, day);
CREATE INDEX statistics_case_by_day ON statistics_case (tenant_id, day);
CREATE INDEX statistics_case_returning ON statistics_case (tenant_id, vehicle) WHERE vehicle IS NOT NULL;
CREATE INDEX statistics_case_after ON statistics_case (tenant_id, previous_case) WHERE previous_case IS NOT NULL;

-- One row per axle whose repair was verified; returned_at is the first later case about that axle of that vehicle.
CREATE TABLE statistics_repair (
  tenant_id     text        COLLATE "C" NOT NULL,
  reference     text        COLLATE "C" NOT NULL,
  axle          integer     NOT NULL,
  items         text[]      NOT NULL,
  verified_at   timestamptz NOT NULL,
  verified_day  date        NOT NULL,
  returned_day  date,
  vehicle       text        COLLATE "C",
  site          text        COLLATE "C" NOT NULL,
  day           date        NOT NULL,
  make          text        COLLATE "C" NOT NULL,
  model         text        COLLATE "C" NOT NULL,
  category      text        COLLATE "C" NOT NULL,
  layout        text        COLLATE "C" NOT NULL,
  age_band      text        COLLATE "C" NOT NULL,
  odometer_band text        COLLATE "C" NOT NULL,
  regime        text        COLLATE "C" NOT NULL,
  PRIMARY KEY (tenant_id, reference, axle)
);
CREATE INDEX statistics_repair_by_site ON statistics_repair (tenant_id, site, day);
CREATE INDEX statistics_repair_by_vehicle ON statistics_repair (tenant_id, make, model, day);
CREATE INDEX statistics_repair_returning ON statistics_repair (tenant_id, vehicle) WHERE vehicle IS NOT NULL;

-- The row of a case as it went (sign -1) and as it came (sign 1); only ever added, and taken by the fold.
CREATE TABLE statistics_delta (
  tenant_id     text      COLLATE "C" NOT NULL,
  delta         bigint    GENERATED ALWAYS AS IDENTITY,
  sign          integer   NOT NULL CHECK (sign IN (-1, 1)),
  site          text      COLLATE "C" NOT NULL,
  day           date      NOT NULL,
  make          text      COLLATE "C" NOT NULL,
  model         text      COLLATE "C" NOT NULL,
  category      text      COLLATE "C" NOT NULL,
  layout        text      COLLATE "C" NOT NULL,
  age_band      text      COLLATE "C" NOT NULL,
  odometer_band text      COLLATE "C" NOT NULL,
  regime        text      COLLATE "C" NOT NULL,
  countables    integer[] NOT NULL,
  amounts       numeric[] NOT NULL,
  PRIMARY KEY (tenant_id, delta)
);

-- Folded counts. A grain says which dimensions its cells are told apart by; the others are blank in them.
CREATE TABLE statistics_cell (
  tenant_id     text    COLLATE "C" NOT NULL,
  grain         text    COLLATE "C" NOT NULL,
  question      text    COLLATE "C" NOT NULL,
  month         date    NOT NULL,
  site          text    COLLATE "C" NOT NULL,
  make          text    COLLATE "C" NOT NULL,
  model         text    COLLATE "C" NOT NULL,
  category      text    COLLATE "C" NOT NULL,
  layout        text    COLLATE "C" NOT NULL,
  age_band      text    COLLATE "C" NOT NULL,
  odometer_band text    COLLATE "C" NOT NULL,
  regime        text    COLLATE "C" NOT NULL,
  countable     integer NOT NULL,
  n             bigint  NOT NULL,
  amount        numeric NOT NULL,
  PRIMARY KEY (tenant_id, grain, question, site, make, model, month, category, layout, age_band, odometer_band, regime,
               countable)
);

-- How many deltas of a tenant were folded; with those that wait it is the age of the data. Its lock is the turn to fold.
CREATE TABLE statistics_fold (
  tenant_id text   COLLATE "C" NOT NULL PRIMARY KEY,
  folded    bigint NOT NULL
);

-- The tenant is asked for once a statement, not once a row: millions of rows are read here.
DO $$
DECLARE
  name text;
BEGIN
  FOREACH name IN ARRAY ARRAY['statistics_countable', 'statistics_case', 'statistics_repair', 'statistics_delta',
      'statistics_cell', 'statistics_fold'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', name);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', name);
    EXECUTE format('CREATE POLICY one_tenant ON %I TO ${serviceRole}'
      ' USING (tenant_id = (SELECT current_setting(''axlecause.tenant'')))'
      ' WITH CHECK (tenant_id = (SELECT current_setting(''axlecause.tenant'')))', name);
  END LOOP;
END
$$;

GRANT SELECT, INSERT                 ON statistics_countable TO ${serviceRole};
GRANT SELECT, INSERT, DELETE         ON statistics_case      TO ${serviceRole};
GRANT SELECT, INSERT, UPDATE, DELETE ON statistics_repair    TO ${serviceRole};
GRANT SELECT, INSERT, UPDATE, DELETE ON statistics_delta     TO ${serviceRole};
GRANT SELECT, INSERT, UPDATE, DELETE ON statistics_cell      TO ${serviceRole};
GRANT SELECT, INSERT, UPDATE         ON statistics_fold      TO ${serviceRole};

-- A replica looks across tenants for deltas that wait: this function alone, as the owner.
CREATE POLICY fold_lookup ON tenant FOR SELECT TO CURRENT_USER USING (true);
CREATE POLICY fold_lookup ON statistics_delta FOR SELECT TO CURRENT_USER USING (true);
CREATE FUNCTION tenants_with_deltas() RETURNS TABLE (tenant_id text)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
  SELECT t.tenant_id
    FROM public.tenant t
   WHERE EXISTS (SELECT 1 FROM public.statistics_delta d WHERE d.tenant_id = t.tenant_id)
   ORDER BY t.tenant_id
$$;
REVOKE ALL ON FUNCTION tenants_with_deltas() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION tenants_with_deltas() TO ${serviceRole};
