-- Weights of causes that a tenant has learned from its confirmed causes: proposals, which are worked out step by step by
-- any replica, and the versions that somebody has published, which never change.

-- Numbers alone, whatever the number of cases: the work goes through the cases in the order of their references.
CREATE TABLE cause_weights_proposal (
  tenant_id   text        NOT NULL REFERENCES tenant,
  proposal    uuid        NOT NULL,
  state       text        NOT NULL CHECK (state IN ('counting', 'scoring', 'proposed', 'nothing-learned', 'withdrawn',
                                                    'published')),
  as_of       timestamptz NOT NULL,
  terms       json,
  position    text        NOT NULL,
  learning    json        NOT NULL,
  model       json,
  created_at  timestamptz NOT NULL,
  created_by  text        NOT NULL,
  finished_at timestamptz,
  PRIMARY KEY (tenant_id, proposal)
);
CREATE UNIQUE INDEX cause_weights_proposal_at_work ON cause_weights_proposal (tenant_id)
  WHERE state IN ('counting', 'scoring');

CREATE TABLE cause_weights_version (
  tenant_id      text        NOT NULL,
  version        integer     NOT NULL CHECK (version > 0),
  effective_from timestamptz NOT NULL,
  proposal       uuid        NOT NULL,
  weights        json        NOT NULL,
  authors        text[]      NOT NULL,
  reason         text        NOT NULL,
  published_at   timestamptz NOT NULL,
  published_by   text        NOT NULL,
  PRIMARY KEY (tenant_id, version),
  UNIQUE (tenant_id, proposal),
  FOREIGN KEY (tenant_id, proposal) REFERENCES cause_weights_proposal
);

DO $$
DECLARE
  name text;
BEGIN
  FOREACH name IN ARRAY ARRAY['cause_weights_proposal', 'cause_weights_version'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', name);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', name);
    EXECUTE format('CREATE POLICY one_tenant ON %I TO ${serviceRole}'
      ' USING (tenant_id = current_setting(''axlecause.tenant''))'
      ' WITH CHECK (tenant_id = current_setting(''axlecause.tenant''))', name);
  END LOOP;
END
$$;

GRANT SELECT, INSERT ON cause_weights_version  TO ${serviceRole};
GRANT SELECT, INSERT ON cause_weights_proposal TO ${serviceRole};
GRANT UPDATE (state, position, learning, model, finished_at) ON cause_weights_proposal TO ${serviceRole};

CREATE TRIGGER cause_weights_version_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON cause_weights_version
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

-- A replica with time to spare looks across tenants for a proposal that is not worked out: this function alone, as the
-- owner.
CREATE POLICY proposal_lookup ON cause_weights_proposal FOR SELECT TO CURRENT_USER USING (true);
CREATE FUNCTION cause_weights_to_work_out() RETURNS TABLE (tenant_id text, proposal uuid)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
  SELECT p.tenant_id, p.proposal
    FROM public.cause_weights_proposal p
   WHERE p.state IN ('counting', 'scoring')
   ORDER BY p.created_at, p.tenant_id, p.proposal
$$;
REVOKE ALL ON FUNCTION cause_weights_to_work_out() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION cause_weights_to_work_out() TO ${serviceRole};
