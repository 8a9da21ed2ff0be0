package org.axlecause.shared;

import java.io.IOException;
import java.nio.charset.StandardCharsets;

/** PostgreSQL never runs as root; the library then steps into a user namespace, where the machine allows one. */
final class RootRefusal {

    private RootRefusal() {}

    static void check() {
        if ("root".equals(System.getProperty("user.name")) && !userNamespaceWorks()) {
            throw refused();
        }
    }

    static EndedAtStartException refused() {
        return CannotStart.because("PostgreSQL doesn't run as root, and this machine allows no user namespace to step"
                + " into (unshare -U). Start the service as another user, or set QUARKUS_DATASOURCE_JDBC_URL,"
                + " QUARKUS_DATASOURCE_USERNAME and QUARKUS_DATASOURCE_PASSWORD to use a PostgreSQL of your own.");
    }

    private static boolean userNamespaceWorks() {
        try {
            Process process = new ProcessBuilder("unshare", "-U", "id", "-u")
                    .redirectErrorStream(true)
                    .start();
            String uid = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).trim();
            return process.waitFor() == 0 && !"0".equals(uid);
        } catch (IOException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
