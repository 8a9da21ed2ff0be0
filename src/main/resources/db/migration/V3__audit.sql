-- Who did what when. An act is noted in the transaction that does it; one writer per tenant ties notes and the heads of
-- the cases' chains into the tenant's chain, off the path of the events, and signs its head now and then.

ALTER TABLE case_file ADD COLUMN chained_length integer NOT NULL DEFAULT 0;
CREATE INDEX case_file_unchained ON case_file (tenant_id, reference) WHERE chained_length < chain_length;

CREATE TABLE audit_note (
  tenant_id text        NOT NULL,
  note      bigint      GENERATED ALWAYS AS IDENTITY,
  noted_at  timestamptz NOT NULL,
  actor     text        NOT NULL,
  action    text        NOT NULL,
  object    text        NOT NULL,
  content   text        NOT NULL,
  PRIMARY KEY (tenant_id, note)
);

CREATE TABLE audit_entry (
  tenant_id text        NOT NULL,
  position  bigint      NOT NULL CHECK (position > 0),
  noted_at  timestamptz NOT NULL,
  actor     text        NOT NULL,
  action    text        NOT NULL,
  object    text        NOT NULL,
  content   text        NOT NULL,
  previous  bytea       NOT NULL CHECK (octet_length(previous) = 32),
  hash      bytea       NOT NULL CHECK (octet_length(hash) = 32),
  PRIMARY KEY (tenant_id, position)
);
CREATE INDEX audit_entry_of_case ON audit_entry (tenant_id, object, position DESC) WHERE action = 'case-head';

CREATE TABLE audit_head (
  tenant_id text        NOT NULL,
  position  bigint      NOT NULL,
  hash      bytea       NOT NULL CHECK (octet_length(hash) = 32),
  signed_at timestamptz NOT NULL,
  key_id    text        NOT NULL,
  signature bytea       NOT NULL,
  PRIMARY KEY (tenant_id, position, key_id)
);

CREATE TRIGGER audit_entry_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON audit_entry
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER audit_head_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON audit_head
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

DO $$
DECLARE
  name text;
BEGIN
  FOREACH name IN ARRAY ARRAY['audit_note', 'audit_entry', 'audit_head'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', name);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', name);
    EXECUTE format('CREATE POLICY one_tenant ON %I TO ${serviceRole}'
      ' USING (tenant_id = current_setting(''axlecause.tenant''))'
      ' WITH CHECK (tenant_id = current_setting(''axlecause.tenant''))', name);
  END LOOP;
END
$$;

GRANT SELECT, INSERT, DELETE ON audit_note  TO ${serviceRole};
GRANT SELECT, INSERT         ON audit_entry TO ${serviceRole};
GRANT SELECT, INSERT         ON audit_head  TO ${serviceRole};

-- The writer and the command that verifies look for tenants before they work for one: these functions alone, as the owner.
CREATE POLICY audit_lookup ON tenant      FOR SELECT TO CURRENT_USER USING (true);
CREATE POLICY audit_lookup ON case_file   FOR SELECT TO CURRENT_USER USING (true);
CREATE POLICY audit_lookup ON audit_note  FOR SELECT TO CURRENT_USER USING (true);
CREATE FUNCTION tenants_to_chain() RETURNS TABLE (tenant_id text)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
  SELECT t.tenant_id
    FROM public.tenant t
   WHERE EXISTS (SELECT 1 FROM public.audit_note n WHERE n.tenant_id = t.tenant_id)
      OR EXISTS (SELECT 1 FROM public.case_file c
                  WHERE c.tenant_id = t.tenant_id AND c.chained_length < c.chain_length)
   ORDER BY t.tenant_id
$$;
CREATE FUNCTION all_tenants() RETURNS TABLE (tenant_id text)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
  SELECT t.tenant_id FROM public.tenant t ORDER BY t.tenant_id
$$;
REVOKE ALL ON FUNCTION tenants_to_chain(), all_tenants() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION tenants_to_chain(), all_tenants() TO ${serviceRole};
