package org.axlecause.statistics;

import io.quarkus.runtime.QuarkusApplication;
import jakarta.enterprise.context.Dependent;
import java.io.PrintStream;

/** The command {@code recount --tenant CODE}: compares the folded cells with the rows of all cases. */
@Dependent
public class RecountCommand implements QuarkusApplication {

    /** First word of its command line. */
    public static final String NAME = "recount";

    private static final String USAGE = """
            recount --tenant CODE
            Ends with 1 where a cell differs from a count of the cases.
            """;

    private static final int DIFFERENT = 1;
    private static final int WRONG_USE = 2;

    private final CountAnew countAnew;

    RecountCommand(CountAnew countAnew) {
        this.countAnew = countAnew;
    }

    @Override
    public int run(String... arguments) {
        return run(arguments, System.out, System.err);
    }

    int run(String[] arguments, PrintStream out, PrintStream problems) {
        if (arguments.length != 3 || !arguments[1].equals("--tenant")) {
            problems.print(USAGE);
            return WRONG_USE;
        }
        String tenant = arguments[2];
        long differences = countAnew.differences(tenant);
        out.println(tenant + ": "
                + (differences == 0
                        ? "all cells of the statistics are as the cases count"
                        : differences + " cells of the statistics differ from a count of the cases"));
        return differences == 0 ? 0 : DIFFERENT;
    }
}
