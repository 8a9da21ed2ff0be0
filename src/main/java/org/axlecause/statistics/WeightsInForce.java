package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.OffsetDateTime;
import java.util.OptionalInt;
import org.axlecause.diagnosis.CauseWeights;
import org.axlecause.judgement.WeightsChoice;
import org.axlecause.shared.Recent;
import org.axlecause.shared.TenantTransaction;

/**
 * Hands out the weights by which causes are weighed. A version never changes, so that each is read once and kept while
 * there is room; the timetable of a tenant is read again as soon as a later publication could matter.
 */
@ApplicationScoped
class WeightsInForce implements WeightsChoice {

    private static final int MOST_TENANTS = 1_000;
    private static final int MOST_VERSIONS = 1_000;

    private final WeightsVersionStore versions;
    private final TenantTransaction transaction;
    private final Recent<String, Timetable> timetables = new Recent<>(MOST_TENANTS);
    private final Recent<Version, CauseWeights> kept = new Recent<>(MOST_VERSIONS);

    WeightsInForce(WeightsVersionStore versions, TenantTransaction transaction) {
        this.versions = versions;
        this.transaction = transaction;
    }

    @Override
    public CauseWeights at(OffsetDateTime moment) {
        OptionalInt version = timetable(moment).at(moment);
        return version.isEmpty() ? CauseWeights.BOOK : version(version.getAsInt());
    }

    private Timetable timetable(OffsetDateTime moment) {
        Timetable known = timetables.find(transaction.tenant());
        return known != null && known.isSureOf(moment)
                ? known
                : timetables.keep(transaction.tenant(), versions.timetable());
    }

    private CauseWeights version(int number) {
        Version key = new Version(transaction.tenant(), number);
        CauseWeights known = kept.find(key);
        return known != null
                ? known
                : kept.keep(key, versions.find(number).orElseThrow().causeWeights());
    }

    private record Version(String tenant, int number) {}
}
