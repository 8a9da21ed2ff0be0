package org.axlecause.fleet;

import io.quarkus.runtime.QuarkusApplication;
import jakarta.enterprise.context.Dependent;
import jakarta.enterprise.context.control.ActivateRequestContext;
import java.io.PrintStream;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.access.Site;
import org.axlecause.access.SiteStore;
import org.axlecause.access.TenantStore;
import org.axlecause.casefile.DrawnCaseStore;
import org.axlecause.shared.TenantTransaction;
import org.axlecause.statistics.CellStore;

/** The command {@code fleet}: draws an invented chain of workshops and fills the statistics with its cases. */
@Dependent
public class FleetCommand implements QuarkusApplication {

    /** First word of its command line. */
    public static final String NAME = "fleet";

    private static final String USAGE = """
            fleet --tenant CODE --cases N [--sites N] [--years N] [--seed N] [--batch yes|no] [--habit yes|no]
                  [--last 2026-10-01]
              --tenant  1 to 32 of a-z, 0-9 and hyphens; it must be new, so that nothing real is mixed with it
              --cases   1,000 to 10,000,000 cases; their rows for statistics are made, without histories
              --sites   2 to 999; 40 without it
              --years   1 to 20 before the last month; 5 without it
              --seed    the same seed draws the same chain; 1 without it
              --batch   whether a bad batch of wheel cylinders is planted; yes without it
              --habit   whether one site has a poor habit; yes without it
              --last    first day of the month after the last one; the present month without it
            """;

    private static final List<String> OPTIONS =
            List.of("--tenant", "--cases", "--sites", "--years", "--seed", "--batch", "--habit", "--last");
    private static final int AT_ONCE = 10_000;
    private static final int FOLDED_AT_ONCE = 50_000;
    private static final int WRONG_USE = 2;

    private final TenantStore tenants;
    private final SiteStore sites;
    private final DrawnCaseStore cases;
    private final CellStore cells;
    private final TenantTransaction transaction;
    private final Clock clock;

    FleetCommand(
            TenantStore tenants,
            SiteStore sites,
            DrawnCaseStore cases,
            CellStore cells,
            TenantTransaction transaction,
            Clock clock) {
        this.tenants = tenants;
        this.sites = sites;
        this.cases = cases;
        this.cells = cells;
        this.transaction = transaction;
        this.clock = clock;
    }

    @Override
    @ActivateRequestContext
    public int run(String... arguments) {
        return run(arguments, System.out, System.err);
    }

    int run(String[] arguments, PrintStream out, PrintStream problems) {
        try {
            Map<String, String> options = options(arguments);
            String tenant = options.getOrDefault("tenant", "");
            if (!tenant.matches("[a-z0-9][a-z0-9-]{0,31}")) {
                throw new IllegalArgumentException(
                        "--tenant is '" + tenant + "'; 1 to 32 of a-z, 0-9 and - are expected");
            }
            int number = whole(options, "cases", 1_000, 10_000_000, 0);
            int siteCount = whole(options, "sites", 2, 999, 40);
            int years = whole(options, "years", 1, 20, 5);
            int seed = whole(options, "seed", 0, Integer.MAX_VALUE, 1);
            LocalDate end = options.containsKey("last")
                    ? LocalDate.parse(options.get("last")).withDayOfMonth(1)
                    : LocalDate.now(clock).withDayOfMonth(1);
            ChainDraw chain = new ChainDraw(
                    siteCount,
                    end.minusYears(years),
                    end,
                    new ChainDraw.Plants(flag(options, "batch"), flag(options, "habit")),
                    seed);
            fill(tenant, chain, number, end.minusYears(years), end, seed, out);
            return 0;
        } catch (IllegalArgumentException | DateTimeException e) {
            problems.println(e.getMessage());
            problems.print(USAGE);
            return WRONG_USE;
        }
    }

    /** Fills a new tenant; the cases come month by month, each part of a month in a transaction of its own. */
    void fill(String tenant, ChainDraw chain, long number, LocalDate first, LocalDate end, long seed, PrintStream out) {
        transaction.run(tenant, () -> {
            if (!sites.all().isEmpty()) {
                throw new IllegalArgumentException(
                        "The tenant '" + tenant + "' has sites already; name one that is new");
            }
            tenants.open(tenant, "Invented fleet");
            chain.sites()
                    .forEach(site -> sites.save(new Site(
                            site.code(),
                            site.code(),
                            site.region(),
                            ZoneId.of("Europe/London"),
                            site.regime().equals("gb-annual") ? "GBP" : "EUR",
                            site.regime(),
                            0)));
            cells.prepare();
        });
        long done = 0;
        double due = 0;
        long began = System.nanoTime();
        for (LocalDate month = first; month.isBefore(end); month = month.plusMonths(1)) {
            due += chain.casesOf(month, number);
            long until = month.plusMonths(1).isBefore(end) ? Math.round(due) : number;
            while (done < until) {
                long some = Math.min(AT_ONCE, until - done);
                add(tenant, chain, done, some, month, seed);
                done += some;
            }
            fold(tenant);
            double seconds = (System.nanoTime() - began) / 1e9;
            out.printf("%s: %,d of %,d cases, %,.0f a second%n", month, done, number, done / seconds);
        }
        out.printf(
                "Batch from %s; site with the habit %s%n",
                chain.batchFrom(), chain.siteWithHabit().code());
    }

    private void add(String tenant, ChainDraw chain, long done, long some, LocalDate month, long seed) {
        List<DrawnCaseStore.Drawn> drawn = new ArrayList<>();
        for (long number = done; number < done + some; number++) {
            drawn.add(chain.draw(number, month, seed));
        }
        transaction.run(tenant, () -> cases.add(drawn));
    }

    private void fold(String tenant) {
        int folded;
        do {
            folded = transaction.call(tenant, () -> cells.foldPatiently(FOLDED_AT_ONCE));
        } while (folded == FOLDED_AT_ONCE);
    }

    private static Map<String, String> options(String[] arguments) {
        Map<String, String> options = new TreeMap<>();
        for (int index = 1; index < arguments.length; index += 2) {
            String option = arguments[index];
            if (!OPTIONS.contains(option) || index + 1 == arguments.length) {
                throw new IllegalArgumentException(option + " isn't an option with a value");
            }
            options.put(option.substring(2), arguments[index + 1]);
        }
        return options;
    }

    private static int whole(Map<String, String> options, String name, int least, int most, int usual) {
        String text = options.get(name);
        int number = text == null
                ? usual
                : text.matches("[0-9]{1,10}") ? (int) Math.min(Long.parseLong(text), Integer.MAX_VALUE) : -1;
        if (number < least || number > most) {
            throw new IllegalArgumentException(
                    "--" + name + " is " + text + "; a number from " + least + " to " + most + " is expected");
        }
        return number;
    }

    private static boolean flag(Map<String, String> options, String name) {
        String text = options.getOrDefault(name, "yes");
        if (!text.equals("yes") && !text.equals("no")) {
            throw new IllegalArgumentException("--" + name + " is " + text + "; yes or no is expected");
        }
        return text.equals("yes");
    }
}
