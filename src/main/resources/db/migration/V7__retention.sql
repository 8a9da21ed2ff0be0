-- Retention: a closed case is removed whole after the time that the operator sets, and leaves a tombstone; never single
-- events. Only one function may do it; the service's role still can't delete from a history.

CREATE TABLE case_tombstone (
  tenant_id    text        NOT NULL,
  reference    text        NOT NULL,
  site         text,
  opened_day   date        NOT NULL,
  closed_at    timestamptz NOT NULL,
  removed_at   timestamptz NOT NULL,
  chain_length integer     NOT NULL,
  chain_hash   bytea       NOT NULL CHECK (octet_length(chain_hash) = 32),
  PRIMARY KEY (tenant_id, reference)
);

-- Which cases name which token of personal data, so that what only removed cases named goes with them.
CREATE TABLE case_identity (
  tenant_id text NOT NULL,
  reference text NOT NULL,
  token     text NOT NULL,
  PRIMARY KEY (tenant_id, reference, token),
  FOREIGN KEY (tenant_id, reference) REFERENCES case_file
);
CREATE INDEX case_identity_by_token ON case_identity (tenant_id, token);

DO $$
DECLARE
  name text;
BEGIN
  FOREACH name IN ARRAY ARRAY['case_tombstone', 'case_identity'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', name);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', name);
    EXECUTE format('CREATE POLICY one_tenant ON %I TO ${serviceRole}'
      ' USING (tenant_id = current_setting(''axlecause.tenant''))'
      ' WITH CHECK (tenant_id = current_setting(''axlecause.tenant''))', name);
  END LOOP;
  -- What the function below reads and removes, as the owner and for one tenant.
  FOREACH name IN ARRAY ARRAY['case_file', 'event', 'judgement', 'test_figures', 'case_cause', 'case_scope_line',
      'case_identity', 'case_departure', 'case_tombstone', 'vehicle_identity'] LOOP
    EXECUTE format('CREATE POLICY removal ON %I TO CURRENT_USER'
      ' USING (tenant_id = current_setting(''axlecause.tenant'', true))'
      ' WITH CHECK (tenant_id = current_setting(''axlecause.tenant'', true))', name);
  END LOOP;
END
$$;

GRANT SELECT         ON case_tombstone TO ${serviceRole};
GRANT SELECT, INSERT ON case_identity  TO ${serviceRole};

-- Histories that were written before this migration, read as their owner.
CREATE POLICY backfill ON event FOR SELECT TO CURRENT_USER USING (true);
CREATE POLICY backfill ON case_identity FOR INSERT TO CURRENT_USER WITH CHECK (true);
INSERT INTO case_identity (tenant_id, reference, token)
SELECT DISTINCT e.tenant_id, e.reference, named.token
  FROM event e
 CROSS JOIN LATERAL (VALUES (e.body -> 'data' -> 'vehicle' ->> 'registration'),
                            (e.body -> 'data' -> 'vehicle' ->> 'vin'),
                            (e.body -> 'data' ->> 'by')) AS named (token)
 WHERE named.token IS NOT NULL;
DROP POLICY backfill ON event;
DROP POLICY backfill ON case_identity;

-- A history stays append only but for the removal of the whole case, by the owner's function alone.
CREATE FUNCTION refuse_change_but_removal() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'DELETE' AND current_setting('axlecause.removed_case', true) = OLD.reference THEN
    RETURN OLD;
  END IF;
  RAISE EXCEPTION 'history is append only: % on % is refused', TG_OP, TG_TABLE_NAME USING ERRCODE = 'restrict_violation';
END
$$;
DROP TRIGGER event_append_only ON event;
CREATE TRIGGER event_append_only BEFORE UPDATE OR TRUNCATE ON event
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER event_removed_with_its_case BEFORE DELETE ON event
  FOR EACH ROW EXECUTE FUNCTION refuse_change_but_removal();
CREATE TRIGGER case_tombstone_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON case_tombstone
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

CREATE INDEX judgement_at_closing ON judgement (judged_at, tenant_id, reference) WHERE occasion = 'closing';

-- Removes one case of the present tenant that was last closed before a moment and whose history is tied into the audit
-- chain to its end; the head of its chain, or no row where the case is not to be removed now.
CREATE FUNCTION remove_closed_case(tenant text, wanted text, closed_before timestamptz, now_is timestamptz)
RETURNS TABLE (length integer, hash bytea)
LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
DECLARE
  kept   public.case_file%ROWTYPE;
  closed timestamptz;
BEGIN
  SELECT * INTO kept FROM public.case_file c
   WHERE c.tenant_id = tenant AND c.reference = wanted AND c.status = 'closed' AND c.chained_length = c.chain_length
     FOR UPDATE SKIP LOCKED;
  IF NOT FOUND THEN
    RETURN;
  END IF;
  SELECT max(j.judged_at) INTO closed FROM public.judgement j
   WHERE j.tenant_id = tenant AND j.reference = wanted AND j.occasion = 'closing';
  IF closed IS NULL OR closed >= closed_before THEN
    RETURN;
  END IF;
  INSERT INTO public.case_tombstone
  VALUES (tenant, wanted, kept.site, kept.opened_day, closed, now_is, kept.chain_length, kept.chain_hash);
  DELETE FROM public.vehicle_identity v
   USING public.case_identity mine
   WHERE mine.tenant_id = tenant AND mine.reference = wanted
     AND v.tenant_id = tenant AND v.token = mine.token
     AND NOT EXISTS (SELECT 1 FROM public.case_identity other
                      WHERE other.tenant_id = tenant AND other.token = mine.token AND other.reference <> wanted);
  DELETE FROM public.case_identity   t WHERE t.tenant_id = tenant AND t.reference = wanted;
  DELETE FROM public.case_departure  t WHERE t.tenant_id = tenant AND t.reference = wanted;
  DELETE FROM public.case_cause      t WHERE t.tenant_id = tenant AND t.reference = wanted;
  DELETE FROM public.case_scope_line t WHERE t.tenant_id = tenant AND t.reference = wanted;
  DELETE FROM public.test_figures    t WHERE t.tenant_id = tenant AND t.reference = wanted;
  DELETE FROM public.judgement       t WHERE t.tenant_id = tenant AND t.reference = wanted;
  PERFORM set_config('axlecause.removed_case', wanted, true);
  DELETE FROM public.event           t WHERE t.tenant_id = tenant AND t.reference = wanted;
  PERFORM set_config('axlecause.removed_case', '', true);
  DELETE FROM public.case_file       t WHERE t.tenant_id = tenant AND t.reference = wanted;
  RETURN QUERY SELECT kept.chain_length, kept.chain_hash;
END
$$;

-- Which cases have waited long enough, of all tenants; the service looks for work before it knows the tenant.
CREATE POLICY removal_lookup ON case_file FOR SELECT TO CURRENT_USER USING (true);
CREATE POLICY removal_lookup ON judgement FOR SELECT TO CURRENT_USER USING (true);
CREATE FUNCTION cases_closed_before(moment timestamptz, most integer) RETURNS TABLE (tenant_id text, reference text)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
  SELECT j.tenant_id, j.reference
    FROM public.judgement j
    JOIN public.case_file c ON c.tenant_id = j.tenant_id AND c.reference = j.reference
   WHERE j.occasion = 'closing' AND j.judged_at < moment
     AND c.status = 'closed' AND c.chained_length = c.chain_length
     AND NOT EXISTS (SELECT 1 FROM public.judgement later
                      WHERE later.tenant_id = j.tenant_id AND later.reference = j.reference
                        AND later.occasion = 'closing' AND later.judged_at > j.judged_at)
   ORDER BY j.judged_at, j.tenant_id, j.reference
   LIMIT most
$$;
REVOKE ALL ON FUNCTION remove_closed_case(text, text, timestamptz, timestamptz), cases_closed_before(timestamptz, integer)
  FROM PUBLIC;
GRANT EXECUTE ON FUNCTION remove_closed_case(text, text, timestamptz, timestamptz), cases_closed_before(timestamptz, integer)
  TO ${serviceRole};

-- The cases whose judging faulted are few and asked for by themselves.
CREATE INDEX case_file_failed ON case_file (tenant_id, opened DESC, reference DESC) WHERE judging = 'failed';
