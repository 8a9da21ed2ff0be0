package org.axlecause.fleet;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.fleet.ChainDraw.Return;
import org.axlecause.fleet.ChainDraw.Step;

/** The months of an invented chain in their order, each with the vehicles that come back in it. */
final class ChainMonths {

    private final ChainDraw chain;
    private final long cases;
    private final LocalDate end;
    private final long seed;
    private final Map<YearMonth, List<Return>> returns = new TreeMap<>();
    private LocalDate month;
    private long done;
    private double due;

    /**
     * @param cases how many cases there are in all months
     * @param first first day of the first month
     * @param end first day of the month after the last one
     * @param seed the same seed draws the same cases
     */
    ChainMonths(ChainDraw chain, long cases, LocalDate first, LocalDate end, long seed) {
        this.chain = chain;
        this.cases = cases;
        this.month = first;
        this.end = end;
        this.seed = seed;
    }

    /** The cases of a month by their numbers: those that come back first. */
    final class Month {

        private final LocalDate day;
        private final long first;
        private final long until;
        private final List<Return> back;

        private Month(LocalDate day, long first, long until, List<Return> back) {
            this.day = day;
            this.first = first;
            this.until = until;
            this.back = back;
        }

        LocalDate firstDay() {
            return day;
        }

        /** The number of its first case. */
        long first() {
            return first;
        }

        /** The number after that of its last case. */
        long until() {
            return until;
        }

        /** The case of a number, the same one whenever it is drawn. */
        Step draw(long number) {
            return number - first < back.size()
                    ? chain.draw(number, back.get((int) (number - first)), seed)
                    : chain.draw(number, day, seed);
        }
    }

    boolean hasNext() {
        return month.isBefore(end);
    }

    /** The next month; what comes back of those before must be known by then. */
    Month next() {
        due += chain.casesOf(month, cases);
        List<Return> back = returns.getOrDefault(YearMonth.from(month), List.of());
        returns.remove(YearMonth.from(month));
        boolean last = !month.plusMonths(1).isBefore(end);
        Month next = new Month(month, done, Math.max(last ? cases : Math.round(due), done + back.size()), back);
        done = next.until;
        month = month.plusMonths(1);
        return next;
    }

    /** Keeps the vehicles that come back later, in the order of the cases that they were repaired in. */
    void comeBack(List<Return> later) {
        later.forEach(each -> returns.computeIfAbsent(YearMonth.from(each.day()), any -> new ArrayList<>())
                .add(each));
    }
}
