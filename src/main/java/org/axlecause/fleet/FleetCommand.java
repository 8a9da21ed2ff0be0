package org.axlecause.fleet;

import io.quarkus.runtime.QuarkusApplication;
import jakarta.enterprise.context.Dependent;
import jakarta.enterprise.context.control.ActivateRequestContext;
import java.io.PrintStream;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The command {@code fleet}: draws an invented chain of workshops and fills the statistics with its cases. */
@Dependent
public class FleetCommand implements QuarkusApplication {

    /** First word of its command line. */
    public static final String NAME = "fleet";

    private static final String USAGE = """
            fleet --tenant CODE --cases N [--sites N] [--years N] [--seed N] [--batch yes|no] [--habit yes|no]
                  [--last 2026-10-01] [--connections N] [--histories N]
              --tenant  1 to 32 of a-z, 0-9 and hyphens; it must be new, so that nothing real is mixed with it
              --cases   1,000 to 10,000,000 cases
              --sites   2 to 999; 40 without it
              --years   1 to 20 before the last month; 5 without it
              --seed    the same seed draws the same chain; 1 without it
              --batch   whether a bad batch of wheel cylinders is planted; yes without it
              --habit   whether one site has a poor habit; yes without it
              --last    first day of the month after the last one; the present month without it
              --connections  1 to 8 transactions that write at a time; as many as processors without it
              --histories  how many cases, spread evenly over all, get their events, hash chain and case document;
                        without it all, and 200,000 of more than 1,000,000; all cases have their rows for statistics
            """;

    private static final List<String> OPTIONS = List.of(
            "--tenant",
            "--cases",
            "--sites",
            "--years",
            "--seed",
            "--batch",
            "--habit",
            "--last",
            "--connections",
            "--histories");
    private static final int WRONG_USE = 2;
    private static final int ALL_HISTORIES_TO = 1_000_000;
    private static final int HISTORIES_BEYOND = 200_000;

    private final FillChain fillChain;
    private final Clock clock;

    FleetCommand(FillChain fillChain, Clock clock) {
        this.fillChain = fillChain;
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
            int connections = whole(
                    options,
                    "connections",
                    1,
                    8,
                    Math.min(8, Runtime.getRuntime().availableProcessors()));
            fillChain.fill(
                    new FillChain.Order(
                            tenant,
                            chain,
                            number,
                            end.minusYears(years),
                            end,
                            seed,
                            connections,
                            whole(
                                    options,
                                    "histories",
                                    0,
                                    number,
                                    number > ALL_HISTORIES_TO ? HISTORIES_BEYOND : number)),
                    out::println);
            out.println("Batch from " + chain.batchFrom() + "; site with the habit "
                    + chain.siteWithHabit().code());
            return 0;
        } catch (IllegalArgumentException | DateTimeException e) {
            problems.println(e.getMessage());
            problems.print(USAGE);
            return WRONG_USE;
        }
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
