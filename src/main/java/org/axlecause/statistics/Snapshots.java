package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeSet;
import java.util.function.Function;
import org.axlecause.access.Actor;
import org.axlecause.access.SiteStore;
import org.axlecause.casefile.StatisticsTerms;
import org.axlecause.regimes.Regimes;
import org.axlecause.shared.Sha256;
import org.axlecause.shared.TenantTransaction;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Answers questions from one state of the data each, and tells by a tag when that state has changed. */
@ApplicationScoped
class Snapshots {

    private final TenantTransaction transaction;
    private final SiteStore sites;
    private final CountStore counts;
    private final CellStore cells;
    private final OpenCaseStore openCases;
    private final Regimes regimes;
    private final Clock clock;
    private final StatisticsTerms terms = StatisticsTerms.released();
    private final int leastCell;

    Snapshots(
            TenantTransaction transaction,
            SiteStore sites,
            CountStore counts,
            CellStore cells,
            OpenCaseStore openCases,
            Regimes regimes,
            Clock clock,
            @ConfigProperty(name = "axlecause.statistics.least-cell") OptionalInt leastCell) {
        this.transaction = transaction;
        this.sites = sites;
        this.counts = counts;
        this.cells = cells;
        this.openCases = openCases;
        this.regimes = regimes;
        this.clock = clock;
        this.leastCell = leastCell.orElse(terms.leastCell());
    }

    StatisticsTerms terms() {
        return terms;
    }

    /** Cells that fewer cases stand behind are withheld. */
    int leastCell() {
        return leastCell;
    }

    /** How many cases of these sites, days, makes and models have not ended; the other filters need an end. */
    long open(Cohort cohort) {
        return openCases.count(cohort);
    }

    /** The answer to a question; all its statements see the same state of the data. */
    <T> T of(Asked asked, Actor actor, Function<ReadQuestion, T> answer) {
        return transaction.snapshot(actor.tenant(), () -> {
            counts.gatherInMemory();
            return answer.apply(new ReadQuestion(asked, actor, sites.all(), terms, counts, regimes.codes()));
        });
    }

    /** A tag that is another one as soon as the answer to this question may be. */
    String tag(String path, Asked asked, String format, Actor actor) {
        String state = transaction.snapshot(actor.tenant(), () -> cells.age() + " " + sites.all());
        String all = String.join(
                "\n",
                actor.tenant(),
                state,
                path,
                asked.values().toString(),
                format,
                Optional.ofNullable(actor.sites())
                        .map(own -> new TreeSet<>(own).toString())
                        .orElse("all"),
                LocalDate.now(clock.withZone(ZoneOffset.UTC)).toString(),
                Integer.toString(leastCell));
        return Sha256.tagOf(all);
    }
}
