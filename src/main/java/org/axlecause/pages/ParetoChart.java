package org.axlecause.pages;

import java.awt.BasicStroke;
import java.awt.Color;
import java.util.List;
import java.util.stream.Collectors;
import org.axlecause.statistics.Pareto;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.AxisLocation;
import org.jfree.chart.axis.CategoryAxis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.labels.ItemLabelAnchor;
import org.jfree.chart.labels.ItemLabelPosition;
import org.jfree.chart.labels.StandardCategoryItemLabelGenerator;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.renderer.category.BarRenderer;
import org.jfree.chart.renderer.category.LineAndShapeRenderer;
import org.jfree.chart.renderer.category.StandardBarPainter;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.category.DefaultCategoryDataset;

/** What comes most: a bar for each count from the most to the least, and a line for what they make up together. */
final class ParetoChart {

    private static final int WIDTH = 640;
    private static final int FRAME = 96;
    private static final int BAR = 30;
    private static final double ROOM_FOR_LAST_POINT = 1.02;
    /** Most lines a chart shows; the rest is named in its description. */
    static final int MOST = 20;

    private ParetoChart() {}

    /**
     * The chart as SVG.
     *
     * @param counted what the counts are of, such as cases
     */
    static String of(Pareto pareto, String counted, Lettering lettering, String id, String title) {
        List<Pareto.Line> lines =
                pareto.lines().subList(0, Math.min(MOST, pareto.lines().size()));
        DefaultCategoryDataset counts = new DefaultCategoryDataset();
        DefaultCategoryDataset together = new DefaultCategoryDataset();
        for (Pareto.Line line : lines) {
            String name = "%s: %d (%s)".formatted(line.name(), line.count(), percent(line.share()));
            counts.addValue((double) line.count(), counted, name);
            together.addValue(line.cumulative(), "together", name);
        }
        CategoryAxis names = new CategoryAxis();
        names.setTickLabelFont(ChartStyle.font());
        names.setMaximumCategoryLabelWidthRatio(0.55f);
        names.setMaximumCategoryLabelLines(2);
        NumberAxis counting = ChartStyle.axis("%s, n = %d (bars)".formatted(counted, pareto.all()));
        counting.setStandardTickUnits(NumberAxis.createIntegerTickUnits());
        counting.setRange(0, Math.max(1.0, (double) pareto.all()) * ROOM_FOR_LAST_POINT);
        CategoryPlot plot = new CategoryPlot(counts, names, counting, bars());
        plot.setOrientation(PlotOrientation.HORIZONTAL);
        plot.setRangeAxisLocation(AxisLocation.BOTTOM_OR_RIGHT);
        NumberAxis shares = ChartStyle.axis("running total (line)", ChartStyle.percent());
        shares.setRange(0, ROOM_FOR_LAST_POINT);
        plot.setRangeAxis(1, shares);
        plot.setRangeAxisLocation(1, AxisLocation.TOP_OR_RIGHT);
        plot.setDataset(1, together);
        plot.setRenderer(1, line());
        plot.mapDatasetToRangeAxis(1, 1);
        plot.setDatasetRenderingOrder(DatasetRenderingOrder.FORWARD);
        plot.setBackgroundPaint(Color.WHITE);
        plot.setRangeGridlinePaint(Color.LIGHT_GRAY);
        JFreeChart chart = ChartStyle.chart(plot, false);
        chart.setPadding(new RectangleInsets(0, 0, 0, 24));
        return Drawing.of(
                chart, lettering, id, WIDTH, FRAME + BAR * lines.size(), title, described(pareto, lines, counted));
    }

    private static BarRenderer bars() {
        BarRenderer renderer = new BarRenderer();
        renderer.setBarPainter(new StandardBarPainter());
        renderer.setShadowVisible(false);
        renderer.setDrawBarOutline(true);
        renderer.setSeriesPaint(0, ChartStyle.PALE);
        renderer.setSeriesOutlinePaint(0, Color.BLACK);
        renderer.setSeriesOutlineStroke(0, new BasicStroke(1f));
        return renderer;
    }

    private static LineAndShapeRenderer line() {
        LineAndShapeRenderer renderer = new LineAndShapeRenderer(true, true);
        renderer.setSeriesPaint(0, Color.BLACK);
        renderer.setSeriesStroke(0, ChartStyle.SOLID);
        renderer.setSeriesShape(0, ChartStyle.CIRCLE);
        renderer.setDefaultItemLabelGenerator(new StandardCategoryItemLabelGenerator("{2}", ChartStyle.percent()));
        renderer.setDefaultItemLabelsVisible(true);
        renderer.setDefaultItemLabelFont(ChartStyle.font());
        renderer.setDefaultPositiveItemLabelPosition(
                new ItemLabelPosition(ItemLabelAnchor.OUTSIDE9, TextAnchor.CENTER_RIGHT));
        return renderer;
    }

    private static String described(Pareto pareto, List<Pareto.Line> lines, String counted) {
        String rest = pareto.lines().size() > lines.size()
                ? " %d more lines with fewer are not drawn."
                        .formatted(pareto.lines().size() - lines.size())
                : "";
        return "%d %s. ".formatted(pareto.all(), counted)
                + lines.stream()
                        .map(line -> "%s %d, %s, together %s"
                                .formatted(
                                        line.name(), line.count(), percent(line.share()), percent(line.cumulative())))
                        .collect(Collectors.joining("; "))
                + "."
                + rest;
    }

    private static String percent(double share) {
        return ChartStyle.percent().format(share);
    }
}
