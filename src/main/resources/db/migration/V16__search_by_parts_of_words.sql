-- A list finds a part of a reference, make or model without reading all cases: every three characters in a row of what is
-- searched are one entry of an index, together with the tenant. Row-level security lets no index of that kind be used by the
-- service's own role, so a function of the owner asks for the present tenant, and nobody else reads or writes the table.
CREATE TABLE case_search (
  tenant_id text NOT NULL,
  reference text NOT NULL,
  search    text NOT NULL,
  PRIMARY KEY (tenant_id, reference),
  FOREIGN KEY (tenant_id, reference) REFERENCES case_file ON DELETE CASCADE
);
ALTER TABLE case_search ENABLE ROW LEVEL SECURITY;
ALTER TABLE case_search FORCE ROW LEVEL SECURITY;
CREATE POLICY searched ON case_search TO CURRENT_USER USING (true) WITH CHECK (true);

CREATE FUNCTION parts_of_words(tenant text, words text) RETURNS text[]
LANGUAGE sql IMMUTABLE PARALLEL SAFE SET search_path = pg_catalog, pg_temp AS $$
  SELECT array_agg(DISTINCT tenant || '/' || substr(words, place, 3)) FROM generate_series(1, length(words) - 2) AS place
$$;
CREATE INDEX case_search_parts ON case_search USING gin (parts_of_words(tenant_id, search))
  WITH (gin_pending_list_limit = 512);

CREATE FUNCTION keep_search() RETURNS trigger
LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
BEGIN
  INSERT INTO public.case_search (tenant_id, reference, search) VALUES (NEW.tenant_id, NEW.reference, NEW.search)
  ON CONFLICT (tenant_id, reference) DO UPDATE SET search = excluded.search;
  RETURN NULL;
END
$$;
CREATE TRIGGER case_is_found AFTER INSERT ON case_file
  FOR EACH ROW EXECUTE FUNCTION keep_search();
CREATE TRIGGER case_is_found_by_its_vehicle AFTER UPDATE OF make, model ON case_file
  FOR EACH ROW WHEN (OLD.search IS DISTINCT FROM NEW.search) EXECUTE FUNCTION keep_search();

-- References of the present tenant's cases that have all parts of these words, at least three characters; the words need not
-- stand in one piece there.
CREATE FUNCTION cases_with(words text) RETURNS TABLE (reference text)
LANGUAGE sql STABLE SECURITY DEFINER ROWS 100 SET search_path = pg_catalog, public, pg_temp AS $$
  SELECT s.reference
    FROM public.case_search s
   WHERE public.parts_of_words(s.tenant_id, s.search)
         @> public.parts_of_words(current_setting('axlecause.tenant'), words)
     AND s.tenant_id = current_setting('axlecause.tenant')
$$;
REVOKE ALL ON FUNCTION cases_with(text), keep_search(), parts_of_words(text, text) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION cases_with(text) TO ${serviceRole};
