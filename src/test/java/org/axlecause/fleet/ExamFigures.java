package org.axlecause.fleet;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.axlecause.facts.CauseCode;
import org.axlecause.judgement.Judgement;

/** What an exam comes to: accuracy, calibration, checks needed and errors, overall and by cause. */
final class ExamFigures {

    private static final int BINS = 10;

    private final List<ExamCase> cases;

    ExamFigures(List<ExamCase> cases) {
        this.cases = cases;
    }

    double firstThreeAfterRollers() {
        return share(cases, ExamCase::amongFirstThree);
    }

    double firstRightInSingleFaultCases() {
        return share(single(), ExamCase::firstIsRight);
    }

    double bothFoundInDoubleFaultCases() {
        return share(cases.stream().filter(one -> !one.single()).toList(), ExamCase::allFound);
    }

    double medianChecks() {
        long[] checks = cases.stream()
                .mapToLong(ExamCase::checksBeyondLookingOver)
                .sorted()
                .toArray();
        return checks[checks.length / 2];
    }

    /** Share of the cases with at most so many checks beyond the looking-over: half where that is the median. */
    double atMost(int checks) {
        return share(cases, one -> one.checksBeyondLookingOver() <= checks);
    }

    /** Distance between what was believed and what was true, over ten bins of probability, weighted by their size. */
    double calibrationError() {
        double error = 0;
        long total = 0;
        for (Bin bin : bins()) {
            error += Math.abs(bin.believed - bin.there);
            total += bin.count;
        }
        return total == 0 ? 0 : error / total;
    }

    List<ExamCase> falselyConfirmedApartFromWrongAnswers() {
        return cases.stream()
                .filter(one -> !one.anyWrong() && !one.falselyConfirmed().isEmpty())
                .toList();
    }

    List<ExamCase> soundPartsConfirmedApartFromWrongAnswers() {
        return cases.stream()
                .filter(one -> !one.anyWrong() && !one.soundPartsConfirmed().isEmpty())
                .toList();
    }

    private List<ExamCase> single() {
        return cases.stream().filter(ExamCase::single).toList();
    }

    private static double share(List<ExamCase> of, Predicate<ExamCase> holds) {
        return of.isEmpty() ? 1 : of.stream().filter(holds).count() / (double) of.size();
    }

    private List<Bin> bins() {
        List<Bin> bins = new ArrayList<>();
        for (int i = 0; i < BINS; i++) {
            bins.add(new Bin());
        }
        for (ExamCase one : cases) {
            for (Judgement judgement : List.of(one.afterRollers(), one.atStop())) {
                ExamCase.beliefs(one, judgement).forEach(belief -> {
                    Bin bin = bins.get(Math.min(BINS - 1, (int) (belief.getKey() * BINS)));
                    bin.count++;
                    bin.believed += belief.getKey();
                    bin.there += belief.getValue() ? 1 : 0;
                });
            }
        }
        return bins;
    }

    String report() {
        StringBuilder report = new StringBuilder();
        line(
                report,
                "cases                                     %d, %d with two faults",
                cases.size(),
                cases.size() - single().size());
        line(report, "a fault among the first three, rollers    %.3f", firstThreeAfterRollers());
        line(report, "first cause right at the stop, one fault  %.3f", firstRightInSingleFaultCases());
        line(
                report,
                "  of those without a wrong answer         %.3f",
                share(single().stream().filter(one -> !one.anyWrong()).toList(), ExamCase::firstIsRight));
        line(report, "both found at the stop, two faults        %.3f", bothFoundInDoubleFaultCases());
        line(report, "checks beyond the looking-over, median    %.0f", medianChecks());
        line(report, "  share of cases with at most four        %.3f", atMost(4));
        line(report, "expected calibration error                %.3f", calibrationError());
        line(report, "cases with a wrong answer                 %.3f", share(cases, ExamCase::anyWrong));
        line(
                report,
                "cases without a wrong answer: a sound part confirmed faulty %d, a sound test called false %d",
                soundPartsConfirmedApartFromWrongAnswers().size(),
                falselyConfirmedApartFromWrongAnswers().size());
        IdentityHashMap<ExamCase, ExamCase.ScopeErrors> scope = new IdentityHashMap<>();
        cases.forEach(one -> scope.put(one, one.scopeErrors()));
        line(
                report,
                "scope at the stop: a required line missing %.3f, a line without a cause %.3f",
                share(cases, one -> scope.get(one).lacks()),
                share(cases, one -> !scope.get(one).withoutCause().isEmpty()));
        line(report, "%nbelieved   there   causes");
        for (Bin bin : bins()) {
            if (bin.count > 0) {
                line(report, "   %.3f   %.3f   %6d", bin.believed / bin.count, bin.there / bin.count, bin.count);
            }
        }
        line(
                report,
                "%n%-32s %6s %9s %9s %9s %7s %9s %9s",
                "fault",
                "cases",
                "first 3",
                "first",
                "found",
                "checks",
                "missing",
                "needless");
        Map<CauseCode, List<ExamCase>> byCause = new TreeMap<>();
        for (ExamCase one : cases) {
            for (Fault fault : one.drawn().faults()) {
                byCause.computeIfAbsent(fault.code(), empty -> new ArrayList<>())
                        .add(one);
            }
        }
        byCause.forEach((code, of) -> line(
                report,
                "%-32s %6d %9.2f %9.2f %9.2f %7.1f %9.2f %9.2f",
                code,
                of.size(),
                share(of.stream().filter(ExamCase::single).toList(), ExamCase::amongFirstThree),
                share(of.stream().filter(ExamCase::single).toList(), ExamCase::firstIsRight),
                share(
                        of,
                        one -> one.drawn().faults().stream()
                                .filter(fault -> fault.code() == code)
                                .allMatch(one::found)),
                of.stream()
                        .mapToLong(ExamCase::checksBeyondLookingOver)
                        .average()
                        .orElse(0),
                of.stream()
                        .mapToInt(one -> scope.get(one).missing(code))
                        .average()
                        .orElse(0),
                of.stream()
                        .filter(ExamCase::single)
                        .mapToInt(one -> scope.get(one).withoutCause().size())
                        .average()
                        .orElse(0)));
        line(report, "%nmissing, needless: required lines a case lacks of this fault, and has without a cause");
        return report.toString();
    }

    private static void line(StringBuilder report, String format, Object... values) {
        report.append(String.format(Locale.ROOT, format + "%n", values));
    }

    private static final class Bin {

        private int count;
        private double believed;
        private double there;
    }
}
