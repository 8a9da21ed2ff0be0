-- The service asks which migrations there are, at its start and for its readiness.
DO $$
BEGIN
  PERFORM pg_advisory_xact_lock(hashtext('axlecause.grant'));
  IF NOT has_table_privilege('${serviceRole}', '${flyway:table}', 'SELECT') THEN
    GRANT SELECT ON ${flyway:table} TO ${serviceRole};
  END IF;
END
$$;
