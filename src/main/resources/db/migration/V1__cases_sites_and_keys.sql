-- Every table: tenant_id first in its key, row-level security forced, rights for the service's role named one by one.
-- Outside a tenant's transaction nothing is seen or written: current_setting without "missing_ok" raises an error on a
-- fresh connection, and on one that served a tenant before, the setting has gone back to '', which no row carries.

CREATE TABLE tenant (
  tenant_id  text        NOT NULL PRIMARY KEY CHECK (tenant_id ~ '^[a-z0-9][a-z0-9-]{0,31}$'),
  name       text        NOT NULL,
  created_at timestamptz NOT NULL
);

CREATE TABLE site (
  tenant_id  text        NOT NULL REFERENCES tenant,
  site       text        NOT NULL CHECK (site ~ '^[A-Za-z0-9._~-]{1,64}$'),
  name       text        NOT NULL,
  region     text,
  time_zone  text        NOT NULL,
  currency   text        NOT NULL CHECK (currency ~ '^[A-Z]{3}$'),
  regime     text        NOT NULL,
  version    integer     NOT NULL,
  PRIMARY KEY (tenant_id, site)
);

CREATE TABLE price_list (
  tenant_id  text        NOT NULL,
  site       text        NOT NULL,
  version    integer     NOT NULL CHECK (version > 0),
  document   json        NOT NULL,
  created_at timestamptz NOT NULL,
  created_by text        NOT NULL,
  PRIMARY KEY (tenant_id, site, version),
  FOREIGN KEY (tenant_id, site) REFERENCES site
);

CREATE TABLE api_key (
  tenant_id  text        NOT NULL REFERENCES tenant,
  key_id     text        NOT NULL,
  name       text        NOT NULL,
  key_hash   bytea       NOT NULL CHECK (octet_length(key_hash) = 32),
  role       text        NOT NULL CHECK (role IN ('sender', 'technician', 'desk', 'policy', 'analyst', 'admin')),
  sites      text[],
  created_at timestamptz NOT NULL,
  created_by text        NOT NULL,
  expires_at timestamptz,
  revoked_at timestamptz,
  PRIMARY KEY (tenant_id, key_id)
);
CREATE INDEX api_key_by_id ON api_key (key_id);

-- One published version of a policy document at one layer; never changed afterwards.
CREATE TABLE policy_version (
  tenant_id      text        NOT NULL REFERENCES tenant,
  name           text        NOT NULL,
  version        integer     NOT NULL CHECK (version > 0),
  effective_from date        NOT NULL,
  document       json        NOT NULL,
  published_at   timestamptz NOT NULL,
  published_by   text        NOT NULL,
  PRIMARY KEY (tenant_id, name, version)
);
CREATE INDEX policy_version_by_day ON policy_version (tenant_id, name, effective_from, version);

-- The latest judgement of a case as the bytes that are served, what lists need, and the head of its history's chain.
CREATE TABLE case_file (
  tenant_id    text        NOT NULL,
  reference    text        NOT NULL CHECK (reference ~ '^[A-Za-z0-9._~-]{1,64}$'),
  site         text,
  status       text        NOT NULL,
  opened       timestamptz NOT NULL,
  opened_day   date        NOT NULL,
  version      integer     NOT NULL,
  make         text,
  model        text,
  search       text        GENERATED ALWAYS AS
                 (lower(reference || ' ' || coalesce(make, '') || ' ' || coalesce(model, ''))) STORED,
  document     json,
  judging      text        NOT NULL CHECK (judging IN ('none', 'done', 'failed')),
  policy       text,
  rulebook     text,
  chain_length integer     NOT NULL,
  chain_hash   bytea       NOT NULL CHECK (octet_length(chain_hash) = 32),
  changed_at   timestamptz NOT NULL,
  PRIMARY KEY (tenant_id, reference)
);
CREATE INDEX case_file_newest ON case_file (tenant_id, opened DESC, reference DESC);
CREATE INDEX case_file_by_site ON case_file (tenant_id, site, opened DESC, reference DESC);
CREATE INDEX case_file_by_status ON case_file (tenant_id, status, opened DESC, reference DESC);

-- The history: each event as received but for personal data, tied to the one before it in its case.
CREATE TABLE event (
  tenant_id   text        NOT NULL,
  reference   text        NOT NULL,
  position    integer     NOT NULL CHECK (position > 0),
  source      text        NOT NULL,
  id          text        NOT NULL,
  type        text        NOT NULL,
  time        timestamptz NOT NULL,
  time_sent   text        NOT NULL,
  received_at timestamptz NOT NULL,
  actor       text        NOT NULL,
  body        json        NOT NULL,
  digest      bytea       NOT NULL CHECK (octet_length(digest) = 32),
  previous    bytea       NOT NULL CHECK (octet_length(previous) = 32),
  hash        bytea       NOT NULL CHECK (octet_length(hash) = 32),
  PRIMARY KEY (tenant_id, reference, position),
  FOREIGN KEY (tenant_id, reference) REFERENCES case_file
);

-- What was ever accepted, kept for good even where a whole case is removed.
CREATE TABLE event_identity (
  tenant_id text  NOT NULL,
  source    text  NOT NULL,
  id        text  NOT NULL,
  digest    bytea NOT NULL CHECK (octet_length(digest) = 32),
  reference text  NOT NULL,
  PRIMARY KEY (tenant_id, source, id)
);

-- The judgements that people acted on: at decisions and at closing.
CREATE TABLE judgement (
  tenant_id text        NOT NULL,
  reference text        NOT NULL,
  version   integer     NOT NULL,
  rulebook  text        NOT NULL,
  occasion  text        NOT NULL CHECK (occasion IN ('decision', 'closing')),
  document  json        NOT NULL,
  judged_at timestamptz NOT NULL,
  PRIMARY KEY (tenant_id, reference, version, rulebook, occasion),
  FOREIGN KEY (tenant_id, reference) REFERENCES case_file
);

-- Figures of a roller test, computed once when the test is accepted.
CREATE TABLE test_figures (
  tenant_id text NOT NULL,
  reference text NOT NULL,
  source    text NOT NULL,
  id        text NOT NULL,
  figures   json NOT NULL,
  PRIMARY KEY (tenant_id, reference, source, id),
  FOREIGN KEY (tenant_id, reference) REFERENCES case_file
);

CREATE TABLE case_cause (
  tenant_id   text    NOT NULL,
  reference   text    NOT NULL,
  rank        integer NOT NULL,
  code        text    NOT NULL,
  axle        integer,
  side        text,
  spot        text,
  circuit     integer,
  standing    text    NOT NULL,
  probability numeric,
  root        boolean NOT NULL,
  PRIMARY KEY (tenant_id, reference, rank),
  FOREIGN KEY (tenant_id, reference) REFERENCES case_file
);
CREATE INDEX case_cause_by_code ON case_cause (tenant_id, code, reference);

CREATE TABLE case_scope_line (
  tenant_id     text    NOT NULL,
  reference     text    NOT NULL,
  line          text    NOT NULL,
  action        text    NOT NULL,
  item          text    NOT NULL,
  axle          integer,
  side          text,
  spot          text,
  circuit       integer,
  extent        text    NOT NULL,
  quantity      numeric NOT NULL,
  necessity     text    NOT NULL,
  standing      text    NOT NULL,
  policy_clause text,
  net           numeric,
  currency      text,
  PRIMARY KEY (tenant_id, reference, line),
  FOREIGN KEY (tenant_id, reference) REFERENCES case_file
);
CREATE INDEX case_scope_line_by_item ON case_scope_line (tenant_id, item, reference);

-- The only place of personal data: encrypted, found again by a keyed digest, free to be erased.
CREATE TABLE vehicle_identity (
  tenant_id  text        NOT NULL,
  digest     bytea       NOT NULL CHECK (octet_length(digest) = 32),
  kind       text        NOT NULL,
  token      text        NOT NULL,
  original   bytea       NOT NULL,
  created_at timestamptz NOT NULL,
  PRIMARY KEY (tenant_id, digest),
  UNIQUE (tenant_id, token)
);

CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'history is append only: % on % is refused', TG_OP, TG_TABLE_NAME USING ERRCODE = 'restrict_violation';
END
$$;
CREATE TRIGGER event_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON event
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER event_identity_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON event_identity
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

DO $$
DECLARE
  name text;
BEGIN
  FOREACH name IN ARRAY ARRAY['tenant', 'site', 'price_list', 'api_key', 'policy_version', 'case_file', 'event',
      'event_identity', 'judgement', 'test_figures', 'case_cause', 'case_scope_line', 'vehicle_identity'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', name);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', name);
    EXECUTE format('CREATE POLICY one_tenant ON %I TO ${serviceRole}'
      ' USING (tenant_id = current_setting(''axlecause.tenant''))'
      ' WITH CHECK (tenant_id = current_setting(''axlecause.tenant''))', name);
  END LOOP;
END
$$;

GRANT SELECT, INSERT                 ON tenant           TO ${serviceRole};
GRANT SELECT, INSERT, UPDATE         ON site             TO ${serviceRole};
GRANT SELECT, INSERT                 ON price_list       TO ${serviceRole};
GRANT SELECT, INSERT, UPDATE         ON api_key          TO ${serviceRole};
GRANT SELECT, INSERT                 ON policy_version   TO ${serviceRole};
GRANT SELECT, INSERT, UPDATE         ON case_file        TO ${serviceRole};
GRANT SELECT, INSERT                 ON event            TO ${serviceRole};
GRANT SELECT, INSERT                 ON event_identity   TO ${serviceRole};
GRANT SELECT, INSERT                 ON judgement        TO ${serviceRole};
GRANT SELECT, INSERT                 ON test_figures     TO ${serviceRole};
GRANT SELECT, INSERT, DELETE         ON case_cause       TO ${serviceRole};
GRANT SELECT, INSERT, DELETE         ON case_scope_line  TO ${serviceRole};
GRANT SELECT, INSERT, DELETE         ON vehicle_identity TO ${serviceRole};

-- A key is looked up before its tenant is known: this function alone looks across tenants, as the owner.
CREATE POLICY key_lookup ON api_key FOR SELECT TO CURRENT_USER USING (true);
CREATE FUNCTION find_api_key(wanted text)
RETURNS TABLE (tenant_id text, key_hash bytea, role text, sites text[], expires_at timestamptz, revoked_at timestamptz)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
  SELECT k.tenant_id, k.key_hash, k.role, k.sites, k.expires_at, k.revoked_at
    FROM public.api_key k WHERE k.key_id = wanted
$$;
REVOKE ALL ON FUNCTION find_api_key(text) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION find_api_key(text) TO ${serviceRole};
