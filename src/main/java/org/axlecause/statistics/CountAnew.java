package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.OptionalLong;
import org.axlecause.shared.TenantTransaction;

/**
 * Compares the folded cells with the rows of the cases, month by month, each in a transaction of its own: nothing is held
 * for long, and what a lost replica had put right stays right.
 */
@ApplicationScoped
public class CountAnew {

    private static final Duration MOST = Duration.ofHours(2);

    private final RecountStore recounts;
    private final TenantTransaction transaction;

    CountAnew(RecountStore recounts, TenantTransaction transaction) {
        this.recounts = recounts;
        this.transaction = transaction;
    }

    /** How many cells of a tenant differ from a count of all rows of the cases; 0 is right. */
    public long differences(String tenant) {
        long differences = 0;
        for (LocalDate month : months(tenant)) {
            differences += transaction.<Long>patiently(tenant, MOST, () -> recounts.differences(month));
        }
        return differences;
    }

    /**
     * Puts all cells of a tenant right; how many differed. Empty where another replica is at it or has done it since that
     * moment.
     */
    OptionalLong all(String tenant, OffsetDateTime moment, OffsetDateTime now) {
        long differences = 0;
        for (LocalDate month : months(tenant)) {
            OptionalLong ofMonth = transaction.patiently(
                    tenant,
                    MOST,
                    () -> recounts.takeTurn(moment) ? OptionalLong.of(recounts.putRight(month)) : OptionalLong.empty());
            if (ofMonth.isEmpty()) {
                return OptionalLong.empty();
            }
            differences += ofMonth.getAsLong();
        }
        long found = differences;
        return transaction.call(tenant, () -> {
            if (!recounts.takeTurn(moment)) {
                return OptionalLong.empty();
            }
            recounts.note(now, found);
            return OptionalLong.of(found);
        });
    }

    private List<LocalDate> months(String tenant) {
        return transaction.patiently(tenant, MOST, recounts::months);
    }
}
