-- Makes the two roles and the database on a fresh server; psql runs it once, as the server's superuser.
-- The owner runs the migrations, the service's role can neither own a table nor step around row-level security.
\getenv owner_password AXLECAUSE_OWNER_PASSWORD
\getenv service_password AXLECAUSE_SERVICE_PASSWORD
\i /axlecause/roles.sql
ALTER ROLE axlecause_owner PASSWORD :'owner_password';
ALTER ROLE axlecause_service PASSWORD :'service_password';
CREATE DATABASE axlecause OWNER axlecause_owner;
\connect axlecause
\i /axlecause/database.sql
