-- The cells of the statistics are counted anew at night; the row that the fold takes turns by says when and with what result.

ALTER TABLE statistics_fold ADD COLUMN recounted_at timestamptz;
ALTER TABLE statistics_fold ADD COLUMN differences  bigint;

-- A replica looks across tenants for whom to count: this function alone, as the owner.
CREATE POLICY recount_lookup ON statistics_fold FOR SELECT TO CURRENT_USER USING (true);
CREATE FUNCTION tenants_not_recounted_since(moment timestamptz) RETURNS TABLE (tenant_id text)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
  SELECT f.tenant_id
    FROM public.statistics_fold f
   WHERE f.recounted_at IS NULL OR f.recounted_at < moment
   ORDER BY f.tenant_id
$$;
REVOKE ALL ON FUNCTION tenants_not_recounted_since(timestamptz) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION tenants_not_recounted_since(timestamptz) TO ${serviceRole};
