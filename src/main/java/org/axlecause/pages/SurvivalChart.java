package org.axlecause.pages;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.stream.Collectors;
import org.axlecause.statistics.ConfidenceLevel;
import org.axlecause.statistics.Interval;
import org.axlecause.statistics.KaplanMeier;
import org.axlecause.statistics.SurvivalStep;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.CrosshairState;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.DeviationStepRenderer;
import org.jfree.chart.renderer.xy.XYItemRendererState;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYDataset;
import org.jfree.data.xy.XYSeriesCollection;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;

/** Shares without an event over time, one alone with its 95 % band, and below them how many are still followed. */
final class SurvivalChart {

    private static final int WIDTH = 500;
    private static final int CURVES = 320;
    private static final int ROW = 24;
    private static final int FRAME = 60;
    private static final int TICKS = 6;
    private static final float BAND = 0.25f;

    private SurvivalChart() {}

    /**
     * A group.
     *
     * @param name words of the group
     * @param curve of one step at least
     */
    record Group(String name, KaplanMeier curve) {}

    /**
     * The chart as SVG.
     *
     * @param until end of the time axis, in the unit of the curves
     * @param event what is waited for, such as a return
     * @param time words of the time axis with its unit
     */
    static String of(
            List<Group> groups, long until, String event, String time, Lettering lettering, String id, String title) {
        NumberAxis times = ChartStyle.axis(time);
        long tick = Math.max(1, until / TICKS);
        times.setRange(0, (double) until);
        times.setTickUnit(new NumberTickUnit((double) tick));
        CombinedDomainXYPlot plot = new CombinedDomainXYPlot(times);
        plot.add(curves(groups, until, event), CURVES);
        plot.add(atRisk(groups, until, tick), ROW * (groups.size() + 1));
        plot.setGap(4);
        int height = CURVES + ROW * (groups.size() + 1) + FRAME;
        return Drawing.of(
                ChartStyle.chart(plot, true), lettering, id, WIDTH, height, title, described(groups, until, event));
    }

    private static XYPlot curves(List<Group> groups, long until, String event) {
        YIntervalSeriesCollection data = new YIntervalSeriesCollection();
        boolean banded = groups.size() == 1;
        groups.forEach(group -> data.addSeries(series(group, until, banded)));
        NumberAxis shares =
                ChartStyle.axis("share without " + event + (banded ? ", 95 % band" : ""), ChartStyle.percent());
        double lowest = lowest(data);
        shares.setRange(lowest, 1);
        DeviationStepRenderer renderer = banded ? new DeviationStepRenderer(true, false) : new StepsAlone();
        renderer.setAlpha(BAND);
        for (int series = 0; series < groups.size(); series++) {
            ChartStyle.line(renderer, series, ChartStyle.STROKES.get(series % ChartStyle.STROKES.size()));
            renderer.setSeriesFillPaint(series, ChartStyle.MIDDLE);
        }
        XYPlot plot = new XYPlot(data, null, shares, renderer);
        ChartStyle.onWhite(plot);
        return plot;
    }

    /** Without bands, which several lines have none of: each would be drawn as wide as its line. */
    private static final class StepsAlone extends DeviationStepRenderer {

        private static final long serialVersionUID = 1L;

        private StepsAlone() {
            super(true, false);
        }

        @Override
        public void drawItem(
                Graphics2D graphics,
                XYItemRendererState state,
                Rectangle2D area,
                PlotRenderingInfo info,
                XYPlot plot,
                ValueAxis times,
                ValueAxis shares,
                XYDataset data,
                int series,
                int item,
                CrosshairState crosshair,
                int pass) {
            if (pass > 0) {
                super.drawItem(graphics, state, area, info, plot, times, shares, data, series, item, crosshair, pass);
            }
        }
    }

    private static YIntervalSeries series(Group group, long until, boolean banded) {
        KaplanMeier curve = group.curve();
        YIntervalSeries series = new YIntervalSeries("%s, n = %d".formatted(group.name(), curve.number()), false, true);
        series.add(0, 1, 1, 1);
        Interval limits = new Interval(1, 1);
        double survival = 1;
        for (SurvivalStep step : curve.steps()) {
            if (step.time() > until) {
                break;
            }
            survival = step.survival();
            Interval alone = new Interval(survival, survival);
            limits = banded ? step.logLog(ConfidenceLevel.OF_95_PERCENT).orElse(alone) : alone;
            if (step.events() > 0) {
                series.add((double) step.time(), survival, limits.low(), limits.high());
            }
        }
        long last = curve.steps().get(curve.steps().size() - 1).time();
        series.add((double) Math.min(until, last), survival, limits.low(), limits.high());
        return series;
    }

    /** The next tenth below all lines and bands, so that what is left of few events can be seen. */
    private static double lowest(YIntervalSeriesCollection data) {
        double lowest = 1;
        for (int series = 0; series < data.getSeriesCount(); series++) {
            for (int item = 0; item < data.getItemCount(series); item++) {
                lowest = Math.min(lowest, data.getStartYValue(series, item));
            }
        }
        return Math.max(0, Math.min(0.9, Math.floor(lowest * 10) / 10));
    }

    private static XYPlot atRisk(List<Group> groups, long until, long tick) {
        SymbolAxis names = new SymbolAxis(null, groups.stream().map(Group::name).toArray(String[]::new));
        names.setTickLabelFont(ChartStyle.font());
        names.setGridBandsVisible(false);
        names.setAxisLineVisible(false);
        names.setTickMarksVisible(false);
        names.setInverted(true);
        names.setRange(-1.5, groups.size() - 0.5);
        XYPlot plot = new XYPlot(new XYSeriesCollection(), null, names, new XYLineAndShapeRenderer());
        plot.setBackgroundPaint(Color.WHITE);
        plot.setOutlineVisible(false);
        plot.setDomainGridlinesVisible(false);
        plot.setRangeGridlinesVisible(false);
        plot.addAnnotation(words("still followed", until / 2.0, -1));
        for (int row = 0; row < groups.size(); row++) {
            KaplanMeier curve = groups.get(row).curve();
            for (long at = 0; at <= until; at += tick) {
                plot.addAnnotation(words(Long.toString(curve.atRiskAt(at)), inside(at, until), row));
            }
        }
        return plot;
    }

    /** The first and the last number stand a little inside, where there is room for them. */
    private static double inside(long at, long until) {
        double margin = until * 0.06;
        return Math.min(until - margin, Math.max(margin, (double) at));
    }

    private static XYTextAnnotation words(String text, double time, double row) {
        XYTextAnnotation words = new XYTextAnnotation(text, time, row);
        words.setFont(ChartStyle.font());
        return words;
    }

    private static String described(List<Group> groups, long until, String event) {
        return groups.stream()
                .map(group -> {
                    KaplanMeier curve = group.curve();
                    return "%s: of %d followed, %d with %s; %s without at %d"
                            .formatted(
                                    group.name(),
                                    curve.number(),
                                    curve.events(),
                                    event,
                                    ChartStyle.percent().format(curve.survivalAt(until)),
                                    until);
                })
                .collect(Collectors.joining(". ", "", "."));
    }
}
