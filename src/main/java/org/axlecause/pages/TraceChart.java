package org.axlecause.pages;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Line2D;
import java.text.NumberFormat;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.jspecify.annotations.Nullable;

/** The forces of two wheels over time; the lines differ by their dashes, not by their colour. */
final class TraceChart {

    private static final int WIDTH = 640;
    private static final int HEIGHT = 240;
    private static final float FONT_SIZE = 12f;
    private static final double MILLISECONDS = 1000;
    private static final Line2D LEGEND_LINE = new Line2D.Double(-22, 0, 22, 0);

    private static final BasicStroke SOLID = new BasicStroke(1.6f);
    private static final BasicStroke DASHED =
            new BasicStroke(1.6f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1f, new float[] {7f, 4f}, 0f);
    private static final List<BasicStroke> STROKES = List.of(SOLID, DASHED);

    private TraceChart() {}

    /**
     * A line.
     *
     * @param name words of the wheel
     * @param samples forces, null where there is a gap
     */
    record Line(String name, List<@Nullable Double> samples) {}

    static String of(
            List<Line> lines,
            double periodInMilliseconds,
            String unit,
            Lettering lettering,
            String id,
            String title,
            String description) {
        XYSeriesCollection data = new XYSeriesCollection();
        for (Line line : lines) {
            XYSeries series = new XYSeries(line.name());
            for (int index = 0; index < line.samples().size(); index++) {
                series.add(
                        index * periodInMilliseconds / MILLISECONDS,
                        line.samples().get(index));
            }
            data.addSeries(series);
        }
        Font font = SheetFonts.regular(FONT_SIZE);
        XYPlot plot =
                new XYPlot(data, axis("time in s", font), axis("braking force in " + unit, font), renderer(lines));
        plot.setBackgroundPaint(Color.WHITE);
        plot.setDomainGridlinePaint(Color.LIGHT_GRAY);
        plot.setRangeGridlinePaint(Color.LIGHT_GRAY);
        JFreeChart chart = new JFreeChart(null, font, plot, true);
        chart.setBackgroundPaint(Color.WHITE);
        chart.getLegend().setItemFont(font);
        chart.getLegend().setPosition(RectangleEdge.TOP);
        chart.getLegend().setFrame(BlockBorder.NONE);
        chart.getLegend().setItemLabelPadding(new RectangleInsets(2, 6, 2, 24));
        return Drawing.of(chart, lettering, id, WIDTH, HEIGHT, title, description);
    }

    private static NumberAxis axis(String words, Font font) {
        NumberAxis axis = new NumberAxis(words);
        axis.setLabelFont(font);
        axis.setTickLabelFont(font);
        axis.setAutoRangeIncludesZero(true);
        axis.setNumberFormatOverride(plain());
        return axis;
    }

    private static NumberFormat plain() {
        NumberFormat format = NumberFormat.getNumberInstance(Locale.ENGLISH);
        format.setGroupingUsed(false);
        return format;
    }

    private static XYLineAndShapeRenderer renderer(List<Line> lines) {
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        renderer.setLegendLine(LEGEND_LINE);
        for (int row = 0; row < lines.size(); row++) {
            renderer.setSeriesPaint(row, Color.BLACK);
            renderer.setSeriesStroke(row, STROKES.get(row % STROKES.size()));
        }
        renderer.setDrawSeriesLineAsPath(true);
        return renderer;
    }
}
