package org.axlecause.casefile;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;
import java.util.Locale;

/** Copies of a stored case under other references, made by the database, for tests that need many. */
public final class CaseCopies {

    private CaseCopies() {}

    /** Copies a case with its history; the copies are called by the prefix and a number from 1. */
    public static void make(Connection connection, String tenant, String reference, String prefix, int copies)
            throws SQLException {
        make(connection, tenant, reference, prefix, new Numbers(1, copies, 1));
    }

    /**
     * Numbers of copies.
     *
     * @param first the first
     * @param last the last that there may be
     * @param step from one to the next
     */
    public record Numbers(int first, int last, int step) {}

    /** Copies a case with its history; the copies are called by the prefix and these numbers. */
    public static void make(Connection connection, String tenant, String reference, String prefix, Numbers numbers)
            throws SQLException {
        String name = "? || lpad(n::text, 6, '0')";
        for (String sql : List.of(
                "INSERT INTO case_file (tenant_id, reference, site, status, opened, opened_day, version, make, model,"
                        + " document, judging, policy, rulebook, judged_of, chain_length, chained_length, chain_hash, changed_at)"
                        + " SELECT tenant_id, " + name + ", site, status, opened, opened_day, version, make, model,"
                        + " document, judging, policy, rulebook, judged_of, chain_length, chain_length, chain_hash, changed_at"
                        + " FROM case_file, generate_series(?, ?, ?) n WHERE tenant_id = ? AND reference = ?",
                "INSERT INTO event (tenant_id, reference, position, source, id, type, time, time_sent, received_at,"
                        + " actor, body, digest, previous, hash) SELECT tenant_id, " + name + ", position, source, id,"
                        + " type, time, time_sent, received_at, actor, body, digest, previous, hash"
                        + " FROM event, generate_series(?, ?, ?) n WHERE tenant_id = ? AND reference = ?",
                "INSERT INTO test_figures (tenant_id, reference, source, id, figures) SELECT tenant_id, " + name
                        + ", source, id, figures FROM test_figures, generate_series(?, ?, ?) n"
                        + " WHERE tenant_id = ? AND reference = ?")) {
            try (PreparedStatement insert = connection.prepareStatement(sql)) {
                insert.setString(1, prefix);
                insert.setInt(2, numbers.first());
                insert.setInt(3, numbers.last());
                insert.setInt(4, numbers.step());
                insert.setString(5, tenant);
                insert.setString(6, reference);
                insert.executeUpdate();
            }
        }
    }

    /** Reference of a copy. */
    public static String name(String prefix, int number) {
        return String.format(Locale.ROOT, "%s%06d", prefix, number);
    }
}
