-- The two roles of the service, run once by a superuser on the server. Give each a password afterwards:
--   ALTER ROLE axlecause_owner PASSWORD '...';    (migrations: QUARKUS_FLYWAY_USERNAME/PASSWORD)
--   ALTER ROLE axlecause_service PASSWORD '...';  (the service: QUARKUS_DATASOURCE_USERNAME/PASSWORD)
--   CREATE DATABASE axlecause OWNER axlecause_owner;
-- then run database.sql inside that database.
DO $$
BEGIN
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'axlecause_owner') THEN
    CREATE ROLE axlecause_owner LOGIN NOSUPERUSER NOBYPASSRLS NOCREATEDB NOCREATEROLE;
  END IF;
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'axlecause_service') THEN
    CREATE ROLE axlecause_service LOGIN NOSUPERUSER NOBYPASSRLS NOCREATEDB NOCREATEROLE;
  END IF;
END
$$;
