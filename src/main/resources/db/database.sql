-- Run once by a superuser inside the service's database: nobody gets in but the two roles.
DO $$
BEGIN
  EXECUTE format('REVOKE ALL ON DATABASE %I FROM PUBLIC', current_database());
  EXECUTE format('GRANT CONNECT ON DATABASE %I TO axlecause_owner, axlecause_service', current_database());
END
$$;
REVOKE CREATE ON SCHEMA public FROM PUBLIC;
