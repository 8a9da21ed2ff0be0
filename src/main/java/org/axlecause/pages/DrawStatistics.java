package org.axlecause.pages;

import jakarta.enterprise.context.ApplicationScoped;
import java.awt.Color;
import java.time.OffsetDateTime;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.axlecause.statistics.Calibration;
import org.axlecause.statistics.Chart;
import org.axlecause.statistics.DrawCharts;
import org.axlecause.statistics.Pareto;
import org.axlecause.statistics.Proportion;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.XYPlot;

/** Draws the charts of statistics as the sheets are drawn, with words for codes. */
@ApplicationScoped
class DrawStatistics implements DrawCharts {

    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", Locale.ENGLISH);
    private static final int WIDTH = 480;
    private static final int BLANK_HEIGHT = 120;

    @Override
    public String svg(Chart chart, OffsetDateTime asOf, String id) {
        String title = title(chart) + ", as of " + MOMENT.format(asOf.withOffsetSameInstant(ZoneOffset.UTC)) + " UTC";
        if (chart.isEmpty()) {
            return blank(id, title);
        }
        if (chart instanceof Chart.Most most) {
            return ParetoChart.of(named(most.causes()), "confirmed causes", Lettering.TEXT, id, title);
        }
        if (chart instanceof Chart.Months months) {
            return MonthlyChart.of(everyMonth(months.months()), "share of the cases", Lettering.TEXT, id, title);
        }
        if (chart instanceof Chart.Returns returns) {
            return SurvivalChart.of(
                    largest(returns.groups()),
                    returns.days(),
                    "a return",
                    "days after the proof of the repair",
                    Lettering.TEXT,
                    id,
                    title);
        }
        if (chart instanceof Chart.Sites sites) {
            return FunnelChart.of(
                    sites.funnel(),
                    "sites",
                    "observed ÷ expected",
                    "expected " + NumbersWords.counted(sites.measure()),
                    Lettering.TEXT,
                    id,
                    title);
        }
        Calibration forecasts = ((Chart.Probabilities) chart).forecasts();
        return forecasts == null ? blank(id, title) : ReliabilityChart.of(forecasts, Lettering.TEXT, id, title);
    }

    /** What a chart shows, in words. */
    static String title(Chart chart) {
        if (chart instanceof Chart.Most) {
            return "Confirmed causes by how often they come";
        }
        if (chart instanceof Chart.Months months) {
            return PlainWords.sentence(plain(months.of())) + " by month";
        }
        if (chart instanceof Chart.Returns returns) {
            int groups = returns.groups().size();
            return "Repairs that have not come back"
                    + (groups > ChartStyle.STROKES.size()
                            ? ", the " + ChartStyle.STROKES.size() + " largest groups"
                            : "");
        }
        if (chart instanceof Chart.Sites sites) {
            return "Sites, " + plain(sites.measure()) + ", against what their vehicles lead to expect";
        }
        return "Probabilities told "
                + (chart.of().equals("arrival") ? "after the arrival test" : "before the first look with a wheel off")
                + " and what came true";
    }

    private static String plain(String code) {
        return code.replace('-', ' ');
    }

    private static Pareto named(Pareto causes) {
        return new Pareto(
                causes.all(),
                causes.lines().stream()
                        .map(line -> new Pareto.Line(plain(line.name()), line.count(), line.share(), line.cumulative()))
                        .toList());
    }

    /** The months from the first to the last; of those between that aren't told nothing is known. */
    private static List<MonthlyChart.Month> everyMonth(List<Chart.Month> told) {
        Map<YearMonth, Proportion> cases =
                told.stream().collect(Collectors.toMap(Chart.Month::month, Chart.Month::cases));
        List<MonthlyChart.Month> months = new ArrayList<>();
        YearMonth last = told.get(told.size() - 1).month();
        for (YearMonth month = told.get(0).month(); !month.isAfter(last); month = month.plusMonths(1)) {
            months.add(new MonthlyChart.Month(month, cases.getOrDefault(month, new Proportion(0, 0))));
        }
        return months;
    }

    /** As many groups as lines can be told apart, those with most repairs. */
    private static List<SurvivalChart.Group> largest(List<Chart.Group> groups) {
        return groups.stream()
                .sorted(Comparator.comparing(
                        (Chart.Group group) -> -group.curve().number()))
                .limit(ChartStyle.STROKES.size())
                .map(group -> new SurvivalChart.Group(
                        group.name().isEmpty() ? "all repairs" : plain(group.name()), group.curve()))
                .toList();
    }

    private static String blank(String id, String title) {
        XYPlot plot = new XYPlot();
        plot.setBackgroundPaint(Color.WHITE);
        plot.setOutlineVisible(false);
        plot.setNoDataMessage("Nothing to draw: too few cases that have ended stand behind it.");
        plot.setNoDataMessageFont(ChartStyle.font());
        JFreeChart chart = ChartStyle.chart(plot, false);
        return Drawing.of(
                chart, Lettering.TEXT, id, WIDTH, BLANK_HEIGHT, title, "Too few cases that have ended stand behind it");
    }
}
