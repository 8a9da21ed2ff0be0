-- What is told to others: the outbox is written with the judgement, a delivery is one event on its way to one
-- subscription. Column names of the outbox are those that change data capture expects.

CREATE TABLE outbox (
  tenant_id     text        NOT NULL,
  id            uuid        NOT NULL,
  position      bigint      GENERATED ALWAYS AS IDENTITY,
  aggregatetype text        NOT NULL,
  aggregateid   text        NOT NULL,
  type          text        NOT NULL,
  site          text,
  payload       json        NOT NULL,
  created_at    timestamptz NOT NULL,
  published_at  timestamptz,
  PRIMARY KEY (tenant_id, id)
);
CREATE INDEX outbox_by_time ON outbox (tenant_id, created_at, position);
CREATE INDEX outbox_unpublished ON outbox (tenant_id, position) WHERE published_at IS NULL;

CREATE TABLE subscription (
  tenant_id     text        NOT NULL REFERENCES tenant,
  subscription  text        NOT NULL,
  version       integer     NOT NULL CHECK (version > 0),
  address       text        NOT NULL,
  description   text        NOT NULL,
  types         text[]      NOT NULL CHECK (cardinality(types) > 0),
  sites         text[],
  state         text        NOT NULL CHECK (state IN ('active', 'stopped', 'gone', 'failed')),
  state_since   timestamptz NOT NULL,
  secret        bytea       NOT NULL,
  former_secret bytea,
  former_until  timestamptz,
  failing_since timestamptz,
  held_until    timestamptz,
  created_at    timestamptz NOT NULL,
  created_by    text        NOT NULL,
  PRIMARY KEY (tenant_id, subscription)
);

-- A claimed delivery is one that is due again only when its claim has run out, so that a lost replica loses nothing.
CREATE TABLE delivery (
  tenant_id    text        NOT NULL,
  subscription text        NOT NULL,
  event        uuid        NOT NULL,
  position     bigint      NOT NULL,
  aggregateid  text        NOT NULL,
  state        text        NOT NULL CHECK (state IN ('pending', 'delivered', 'failed')),
  attempts     integer     NOT NULL,
  due_at       timestamptz NOT NULL,
  claim        uuid,
  attempted_at timestamptz,
  outcome      text,
  PRIMARY KEY (tenant_id, subscription, event),
  FOREIGN KEY (tenant_id, subscription) REFERENCES subscription ON DELETE CASCADE,
  FOREIGN KEY (tenant_id, event) REFERENCES outbox ON DELETE CASCADE
);
CREATE INDEX delivery_due ON delivery (tenant_id, subscription, due_at) WHERE state = 'pending';
CREATE INDEX delivery_in_order ON delivery (tenant_id, subscription, aggregateid, position) WHERE state = 'pending';
CREATE INDEX delivery_newest ON delivery (tenant_id, subscription, position DESC);
CREATE INDEX delivery_of_event ON delivery (tenant_id, event);

DO $$
DECLARE
  name text;
BEGIN
  FOREACH name IN ARRAY ARRAY['outbox', 'subscription', 'delivery'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', name);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', name);
    EXECUTE format('CREATE POLICY one_tenant ON %I TO ${serviceRole}'
      ' USING (tenant_id = current_setting(''axlecause.tenant''))'
      ' WITH CHECK (tenant_id = current_setting(''axlecause.tenant''))', name);
  END LOOP;
END
$$;

GRANT SELECT, INSERT, UPDATE (published_at), DELETE ON outbox       TO ${serviceRole};
GRANT SELECT, INSERT, UPDATE, DELETE                ON subscription TO ${serviceRole};
GRANT SELECT, INSERT, UPDATE, DELETE                ON delivery     TO ${serviceRole};

-- Whoever sends looks across tenants before it knows whose turn it is: these two functions alone, as the owner.
CREATE POLICY due_lookup ON subscription FOR SELECT TO CURRENT_USER USING (true);
CREATE POLICY due_lookup ON delivery FOR SELECT TO CURRENT_USER USING (true);
CREATE FUNCTION due_subscriptions(moment timestamptz, failing boolean)
RETURNS TABLE (tenant_id text, subscription text)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
  SELECT s.tenant_id, s.subscription
    FROM public.subscription s
   WHERE s.state = 'active'
     AND (s.failing_since IS NOT NULL) = failing
     AND (s.held_until IS NULL OR s.held_until <= moment)
     AND EXISTS (SELECT 1 FROM public.delivery d
                  WHERE d.tenant_id = s.tenant_id AND d.subscription = s.subscription
                    AND d.state = 'pending' AND d.due_at <= moment)
   ORDER BY s.tenant_id, s.subscription
$$;
REVOKE ALL ON FUNCTION due_subscriptions(timestamptz, boolean) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION due_subscriptions(timestamptz, boolean) TO ${serviceRole};

CREATE POLICY age_lookup ON tenant FOR SELECT TO CURRENT_USER USING (true);
CREATE POLICY age_lookup ON outbox FOR SELECT TO CURRENT_USER USING (true);
CREATE FUNCTION tenants_with_events_before(moment timestamptz) RETURNS TABLE (tenant_id text)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
  SELECT t.tenant_id
    FROM public.tenant t
   WHERE EXISTS (SELECT 1 FROM public.outbox o WHERE o.tenant_id = t.tenant_id AND o.created_at < moment)
   ORDER BY t.tenant_id
$$;
REVOKE ALL ON FUNCTION tenants_with_events_before(timestamptz) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION tenants_with_events_before(timestamptz) TO ${serviceRole};
