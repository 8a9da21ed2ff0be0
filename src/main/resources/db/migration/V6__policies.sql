-- Policies: a draft per name until it is published, immutable versions, departures counted per case, and trials of a draft
-- over past cases, whose work is cut into batches that any replica takes.

ALTER TABLE policy_version ADD COLUMN covers  text[];
ALTER TABLE policy_version ADD COLUMN authors text[] NOT NULL DEFAULT '{}';
ALTER TABLE policy_version ADD COLUMN reason  text   NOT NULL DEFAULT '';
ALTER TABLE policy_version ADD CONSTRAINT policy_version_name CHECK (name ~ '^[a-z0-9][a-z0-9-]{0,62}$');

CREATE TABLE policy_draft (
  tenant_id  text        NOT NULL REFERENCES tenant,
  name       text        NOT NULL CHECK (name ~ '^[a-z0-9][a-z0-9-]{0,62}$'),
  tag        uuid        NOT NULL,
  document   json        NOT NULL,
  covers     text[],
  authors    text[]      NOT NULL,
  written_at timestamptz NOT NULL,
  written_by text        NOT NULL,
  PRIMARY KEY (tenant_id, name)
);

-- What a site departed from, as the judgement of the case has it; written anew with each judgement.
CREATE TABLE case_departure (
  tenant_id text    NOT NULL,
  reference text    NOT NULL,
  source    text    NOT NULL,
  id        text    NOT NULL,
  clause    text    NOT NULL,
  line      text,
  acts      boolean NOT NULL,
  PRIMARY KEY (tenant_id, reference, source, id),
  FOREIGN KEY (tenant_id, reference) REFERENCES case_file
);
CREATE INDEX case_departure_by_clause ON case_departure (tenant_id, clause, reference);

-- The result grows by a bounded number of examples and by numbers alone, whatever the number of cases.
CREATE TABLE policy_trial (
  tenant_id   text        NOT NULL REFERENCES tenant,
  trial       uuid        NOT NULL,
  name        text        NOT NULL,
  document    json        NOT NULL,
  covers      text[],
  sites       text[],
  from_day    date,
  to_day      date,
  cause       text,
  state       text        NOT NULL CHECK (state IN ('running', 'done', 'cancelled')),
  cases       integer     NOT NULL,
  tried       integer     NOT NULL,
  rulebook    text        NOT NULL,
  result      json        NOT NULL,
  created_at  timestamptz NOT NULL,
  created_by  text        NOT NULL,
  finished_at timestamptz,
  PRIMARY KEY (tenant_id, trial)
);

CREATE TABLE policy_trial_batch (
  tenant_id text    NOT NULL,
  trial     uuid    NOT NULL,
  batch     integer NOT NULL,
  first     text    NOT NULL,
  last      text    NOT NULL,
  PRIMARY KEY (tenant_id, trial, batch),
  FOREIGN KEY (tenant_id, trial) REFERENCES policy_trial ON DELETE CASCADE
);

DO $$
DECLARE
  name text;
BEGIN
  FOREACH name IN ARRAY ARRAY['policy_draft', 'case_departure', 'policy_trial', 'policy_trial_batch'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', name);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', name);
    EXECUTE format('CREATE POLICY one_tenant ON %I TO ${serviceRole}'
      ' USING (tenant_id = current_setting(''axlecause.tenant''))'
      ' WITH CHECK (tenant_id = current_setting(''axlecause.tenant''))', name);
  END LOOP;
END
$$;

GRANT SELECT, INSERT, UPDATE, DELETE ON policy_draft       TO ${serviceRole};
GRANT SELECT, INSERT, DELETE         ON case_departure     TO ${serviceRole};
GRANT SELECT, INSERT, UPDATE         ON policy_trial       TO ${serviceRole};
GRANT SELECT, INSERT, UPDATE, DELETE ON policy_trial_batch TO ${serviceRole};

-- A replica with time to spare looks across tenants for a trial that still has work: this function alone, as the owner.
CREATE POLICY trial_lookup ON policy_trial FOR SELECT TO CURRENT_USER USING (true);
CREATE POLICY trial_lookup ON policy_trial_batch FOR SELECT TO CURRENT_USER USING (true);
CREATE FUNCTION trials_to_run() RETURNS TABLE (tenant_id text, trial uuid)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
  SELECT t.tenant_id, t.trial
    FROM public.policy_trial t
   WHERE t.state = 'running'
   ORDER BY t.created_at, t.tenant_id, t.trial
$$;
REVOKE ALL ON FUNCTION trials_to_run() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION trials_to_run() TO ${serviceRole};
