package org.axlecause.fleet;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import org.axlecause.access.Site;
import org.axlecause.access.SiteStore;
import org.axlecause.access.TenantStore;
import org.axlecause.casefile.CopiedCaseStore;
import org.axlecause.casefile.DrawnCaseStore;
import org.axlecause.fleet.ChainDraw.Return;
import org.axlecause.fleet.ChainDraw.Step;
import org.axlecause.shared.TenantTransaction;
import org.axlecause.statistics.CellStore;
import org.axlecause.statistics.RecountStore;

/**
 * Fills a new tenant with the cases of an invented chain. The cases come month by month, thousands in a
 * transaction and several transactions at a time; the cells of a month are counted when all its cases are there.
 */
@ApplicationScoped
class FillChain {

    private static final int AT_ONCE = 10_000;
    private static final int HISTORIES_AT_ONCE = 100;
    private static final Duration LONGEST_COUNT = Duration.ofHours(1);
    private static final ZoneId ZONE = ZoneId.of("Europe/London");

    private final TenantStore tenants;
    private final SiteStore sites;
    private final DrawnCaseStore cases;
    private final TellStories stories;
    private final CopiedCaseStore copies;
    private final CellStore cells;
    private final RecountStore recounts;
    private final TenantTransaction transaction;

    FillChain(
            TenantStore tenants,
            SiteStore sites,
            DrawnCaseStore cases,
            TellStories stories,
            CopiedCaseStore copies,
            CellStore cells,
            RecountStore recounts,
            TenantTransaction transaction) {
        this.tenants = tenants;
        this.sites = sites;
        this.cases = cases;
        this.stories = stories;
        this.copies = copies;
        this.cells = cells;
        this.recounts = recounts;
        this.transaction = transaction;
    }

    /**
     * What is drawn.
     *
     * @param tenant a new tenant, so that nothing real is mixed with it
     * @param chain the chain
     * @param cases how many cases
     * @param first first day of the first month
     * @param end first day of the month after the last one
     * @param seed the same seed draws the same cases
     * @param connections how many transactions write at a time
     * @param histories how many cases, spread evenly over all, get a history and a document beside their rows for statistics
     */
    record Order(
            String tenant,
            ChainDraw chain,
            long cases,
            LocalDate first,
            LocalDate end,
            long seed,
            int connections,
            long histories) {

        /** Whether the case of a number gets a history. */
        boolean hasHistory(long number) {
            return (number + 1) * histories / cases > number * histories / cases;
        }
    }

    /** Fills the tenant and tells how far it has come, a line a month; refuses a tenant that has sites. */
    void fill(Order order, Consumer<String> progress) {
        open(order);
        long began = System.nanoTime();
        List<Future<?>> counting = new ArrayList<>();
        ChainMonths months = new ChainMonths(order.chain(), order.cases(), order.first(), order.end(), order.seed());
        ExecutorService workers = Executors.newFixedThreadPool(order.connections());
        try {
            long done = 0;
            while (months.hasNext()) {
                ChainMonths.Month month = months.next();
                months.comeBack(write(order, month, workers));
                done = month.until();
                counting.add(workers.submit(() -> count(order.tenant(), month.firstDay())));
                progress.accept(String.format(
                        Locale.ROOT,
                        "%s: %,d of %,d cases, %,.0f a second",
                        month.firstDay(),
                        done,
                        order.cases(),
                        done / seconds(began)));
            }
            for (Future<?> count : counting) {
                result(count);
            }
            progress.accept(String.format(
                    Locale.ROOT, "%,d cases with the cells of their statistics in %,.0f s", done, seconds(began)));
        } finally {
            workers.shutdownNow();
        }
    }

    private static double seconds(long began) {
        return (System.nanoTime() - began) / 1e9;
    }

    private void open(Order order) {
        transaction.run(order.tenant(), () -> {
            if (!sites.all().isEmpty()) {
                throw new IllegalArgumentException(
                        "The tenant '" + order.tenant() + "' has sites already; name one that is new");
            }
            tenants.open(order.tenant(), "Invented fleet");
            order.chain()
                    .sites()
                    .forEach(site -> sites.save(new Site(
                            site.code(), site.code(), site.region(), ZONE, site.currency(), site.regime(), 0)));
            cells.prepare();
        });
    }

    private long count(String tenant, LocalDate month) {
        return transaction.<Long>patiently(tenant, LONGEST_COUNT, () -> recounts.putRight(month));
    }

    /** Draws and writes the cases of a month; the vehicles that come back later, in the order of their cases. */
    private List<Return> write(Order order, ChainMonths.Month month, ExecutorService workers) {
        List<Future<List<Return>>> parts = new ArrayList<>();
        for (long begin = month.first(); begin < month.until(); begin += AT_ONCE) {
            long from = begin;
            parts.add(workers.submit(() -> write(order, month, from, Math.min(month.until(), from + AT_ONCE))));
        }
        List<Return> later = new ArrayList<>();
        parts.forEach(part -> later.addAll(result(part)));
        return later;
    }

    /** Cases of one site and model are written beside each other, so that they are read together. */
    private List<Return> write(Order order, ChainMonths.Month month, long from, long until) {
        List<DrawnCaseStore.Drawn> drawn = new ArrayList<>();
        List<DrawnCaseStore.Drawn> told = new ArrayList<>();
        List<Return> later = new ArrayList<>();
        for (long number = from; number < until; number++) {
            Step step = month.draw(number);
            drawn.add(step.drawn());
            if (order.hasHistory(number)) {
                told.add(step.drawn());
            }
            if (step.later() != null) {
                later.add(step.later());
            }
        }
        drawn.sort(Comparator.comparing(DrawnCaseStore.Drawn::site)
                .thenComparing(DrawnCaseStore.Drawn::model)
                .thenComparing(DrawnCaseStore.Drawn::reference));
        transaction.run(order.tenant(), () -> cases.add(drawn));
        for (int first = 0; first < told.size(); first += HISTORIES_AT_ONCE) {
            List<CopiedCaseStore.Copy> some =
                    told.subList(first, Math.min(told.size(), first + HISTORIES_AT_ONCE)).stream()
                            .map(each -> stories.copy(order.tenant(), each))
                            .toList();
            transaction.run(order.tenant(), () -> copies.add(some));
        }
        return later;
    }

    private static <T> T result(Future<T> part) {
        try {
            return part.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("The filling was interrupted", e);
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException fault) {
                throw fault;
            }
            throw new IllegalStateException(e.getCause());
        }
    }
}
