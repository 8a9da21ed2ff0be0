package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.axlecause.casefile.Countable;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;
import org.axlecause.shared.TenantTransaction;

/** Reads the cases that have ended and whose histories are still there, with the causes that were confirmed. */
@ApplicationScoped
class ConfirmedCaseStore {

    /**
     * A case that names an earlier one is of the same vehicle: it is known where both bear the same token, or the earlier
     * one isn't counted.
     */
    private static final String AFTER = """
            WITH ended AS (
              SELECT f.reference, c.vehicle, c.previous_case, c.countables
                FROM case_file f
                JOIN statistics_case c ON c.tenant_id = ? AND c.reference = f.reference COLLATE "C"
               WHERE f.tenant_id = ? AND f.reference > ? AND c.opened <= ?
               ORDER BY f.reference LIMIT ?)
            SELECT e.reference, coalesce(e.vehicle, e.reference) AS vehicle,
                   e.previous_case IS NULL
                     OR (e.vehicle IS NOT NULL AND coalesce(p.vehicle = e.vehicle, p.reference IS NULL)) AS vehicle_known,
                   ARRAY(SELECT DISTINCT k.code || ' ' || k.axle || ' ' || k.side
                           FROM statistics_countable k
                          WHERE k.tenant_id = ? AND k.countable = ANY (e.countables)
                            AND k.question = ? AND k.code <> ?
                          ORDER BY 1) AS causes
              FROM ended e
              LEFT JOIN statistics_case p ON p.tenant_id = ? AND p.reference = e.previous_case
             ORDER BY e.reference
            """;

    private final TenantTransaction transaction;

    ConfirmedCaseStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /**
     * The next cases in the order in which the database keeps their references.
     *
     * @param reference reference after which they come
     * @param openedBy moment until which they were opened
     */
    List<ConfirmedCase> after(String reference, OffsetDateTime openedBy, int most) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(AFTER)) {
                query.setString(1, tenant);
                query.setString(2, tenant);
                query.setString(3, reference);
                query.setObject(4, openedBy);
                query.setInt(5, most);
                query.setString(6, tenant);
                query.setString(7, Countable.CAUSE);
                query.setString(8, Countable.UNDETERMINED);
                query.setString(9, tenant);
                List<ConfirmedCase> cases = new ArrayList<>();
                try (ResultSet row = query.executeQuery()) {
                    while (row.next()) {
                        cases.add(read(row));
                    }
                }
                return cases;
            }
        });
    }

    private static ConfirmedCase read(ResultSet row) throws SQLException {
        List<ConfirmedCase.Confirmed> causes = new ArrayList<>();
        for (String cause : (String[]) row.getArray("causes").getArray()) {
            String[] words = cause.split(" ", -1);
            causes.add(new ConfirmedCase.Confirmed(
                    CauseCode.valueOf(constant(words[0])), place(Integer.parseInt(words[1]), words[2])));
        }
        return new ConfirmedCase(
                row.getString("reference"), row.getString("vehicle"), row.getBoolean("vehicle_known"), causes);
    }

    private static Place place(int axle, String side) {
        if (axle == 0) {
            return Place.VEHICLE;
        }
        return side.isEmpty() ? Place.ofAxle(axle) : Place.ofWheel(axle, Side.valueOf(constant(side)));
    }

    private static String constant(String code) {
        return code.toUpperCase(Locale.ROOT).replace('-', '_');
    }
}
