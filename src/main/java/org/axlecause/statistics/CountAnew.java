package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.function.LongSupplier;
import org.axlecause.shared.TenantTransaction;

/**
 * Compares the folded cells with the rows of the cases, month by month, and the cells of the years with those of their
 * months, each in a transaction of its own: nothing is held for long, and what a lost replica had put right stays right.
 */
@ApplicationScoped
public class CountAnew {

    private static final Duration MOST = Duration.ofHours(2);

    private final RecountStore recounts;
    private final YearCellStore years;
    private final TenantTransaction transaction;

    CountAnew(RecountStore recounts, YearCellStore years, TenantTransaction transaction) {
        this.recounts = recounts;
        this.years = years;
        this.transaction = transaction;
    }

    /** How many cells of a tenant differ from a count of all rows of the cases; 0 is right. */
    public long differences(String tenant) {
        List<LocalDate> months = months(tenant);
        long differences = 0;
        for (LocalDate month : months) {
            differences += transaction.<Long>patiently(tenant, MOST, () -> recounts.differences(month));
        }
        for (LocalDate year : years(months)) {
            differences += transaction.<Long>patiently(tenant, MOST, () -> years.differences(year));
        }
        return differences;
    }

    /**
     * Puts all cells of a tenant right; how many differed. Empty where another replica is at it or has done it since that
     * moment.
     */
    OptionalLong all(String tenant, OffsetDateTime moment, OffsetDateTime now) {
        List<LocalDate> months = months(tenant);
        List<LongSupplier> counts = new ArrayList<>();
        months.forEach(month -> counts.add(() -> recounts.putRight(month)));
        years(months).forEach(year -> counts.add(() -> years.putRight(year)));
        long differences = 0;
        for (LongSupplier count : counts) {
            OptionalLong found = transaction.patiently(
                    tenant,
                    MOST,
                    () -> recounts.takeTurn(moment) ? OptionalLong.of(count.getAsLong()) : OptionalLong.empty());
            if (found.isEmpty()) {
                return OptionalLong.empty();
            }
            differences += found.getAsLong();
        }
        long all = differences;
        return transaction.call(tenant, () -> {
            if (!recounts.takeTurn(moment)) {
                return OptionalLong.empty();
            }
            recounts.note(now, all);
            return OptionalLong.of(all);
        });
    }

    private static List<LocalDate> years(List<LocalDate> months) {
        return months.stream().map(month -> month.withDayOfYear(1)).distinct().toList();
    }

    private List<LocalDate> months(String tenant) {
        return transaction.patiently(tenant, MOST, recounts::months);
    }
}
