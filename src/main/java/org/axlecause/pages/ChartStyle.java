package org.axlecause.pages;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.text.NumberFormat;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.text.TextUtils;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;

/** What all charts have in common: one type, black and grey on white, lines that differ by dashes, points by shape. */
final class ChartStyle {

    static final Color PALE = new Color(0xD9D9D9);
    static final Color MIDDLE = new Color(0x8C8C8C);

    private static final float FONT_SIZE = 12f;
    private static final float LINE = 1.6f;
    private static final FontRenderContext MEASURED = new FontRenderContext(null, true, true);
    private static final Line2D LEGEND_LINE = new Line2D.Double(-22, 0, 22, 0);

    static final BasicStroke SOLID = new BasicStroke(LINE);
    static final BasicStroke DASHED = dashed(7f, 4f);
    static final BasicStroke DOTTED = dashed(1.6f, 3f);
    static final BasicStroke DASH_AND_DOT = dashed(9f, 3f, 2f, 3f);

    /** The lines of a chart in their order, told apart without colour. */
    static final List<BasicStroke> STROKES = List.of(SOLID, DASHED, DASH_AND_DOT, DOTTED);

    static final Shape CIRCLE = new Ellipse2D.Double(-3.5, -3.5, 7, 7);
    static final Shape SQUARE = new Rectangle2D.Double(-4, -4, 8, 8);
    static final Shape DIAMOND = diamond(6.5);

    static {
        // Why: upright words would be drawn as shapes, which no screen can read.
        TextUtils.setUseDrawRotatedStringWorkaround(false);
    }

    private ChartStyle() {}

    static Font font() {
        return SheetFonts.regular(FONT_SIZE);
    }

    /** How wide these words are set, as charts are laid out. */
    static double widthOf(String words) {
        return font().getStringBounds(words, MEASURED).getWidth();
    }

    /** A chart of one plot, with a legend above it or without. */
    static JFreeChart chart(Plot plot, boolean legend) {
        JFreeChart chart = new JFreeChart(null, font(), plot, legend);
        chart.setBackgroundPaint(Color.WHITE);
        LegendTitle lines = chart.getLegend();
        if (lines != null) {
            lines.setItemFont(font());
            lines.setPosition(RectangleEdge.TOP);
            lines.setFrame(BlockBorder.NONE);
            lines.setItemLabelPadding(new RectangleInsets(2, 6, 2, 24));
        }
        return chart;
    }

    static NumberAxis axis(String words) {
        return axis(words, plain());
    }

    static NumberAxis axis(String words, NumberFormat format) {
        return styled(new NumberAxis(words), format);
    }

    static <A extends NumberAxis> A styled(A axis, NumberFormat format) {
        axis.setLabelFont(font());
        axis.setTickLabelFont(font());
        axis.setAutoRangeIncludesZero(true);
        axis.setNumberFormatOverride(format);
        return axis;
    }

    static void onWhite(XYPlot plot) {
        plot.setBackgroundPaint(Color.WHITE);
        plot.setDomainGridlinePaint(Color.LIGHT_GRAY);
        plot.setRangeGridlinePaint(Color.LIGHT_GRAY);
    }

    /** A black line without points, as a series of a renderer and in its legend. */
    static void line(XYLineAndShapeRenderer renderer, int series, BasicStroke stroke) {
        renderer.setLegendLine(LEGEND_LINE);
        renderer.setSeriesPaint(series, Color.BLACK);
        renderer.setSeriesStroke(series, stroke);
        renderer.setSeriesLinesVisible(series, true);
        renderer.setSeriesShapesVisible(series, false);
    }

    /** Points without a line, outlined in black. */
    static void points(XYLineAndShapeRenderer renderer, int series, Shape shape, Color fill) {
        renderer.setUseFillPaint(true);
        renderer.setDrawOutlines(true);
        renderer.setSeriesPaint(series, Color.BLACK);
        renderer.setSeriesFillPaint(series, fill);
        renderer.setSeriesShape(series, shape);
        renderer.setSeriesShapesFilled(series, true);
        renderer.setSeriesShapesVisible(series, true);
        renderer.setSeriesLinesVisible(series, false);
    }

    static NumberFormat plain() {
        NumberFormat format = NumberFormat.getNumberInstance(Locale.ENGLISH);
        format.setGroupingUsed(false);
        return format;
    }

    /** A share as per cent, with a decimal where there is one to see. */
    static NumberFormat percent() {
        return new DecimalFormat("0.# %", DecimalFormatSymbols.getInstance(Locale.ENGLISH));
    }

    private static BasicStroke dashed(float... dashes) {
        return new BasicStroke(LINE, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1f, dashes, 0f);
    }

    private static Shape diamond(double reach) {
        Path2D path = new Path2D.Double();
        path.moveTo(0, -reach);
        path.lineTo(reach, 0);
        path.lineTo(0, reach);
        path.lineTo(-reach, 0);
        path.closePath();
        return path;
    }
}
