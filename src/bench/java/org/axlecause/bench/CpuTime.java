package org.axlecause.bench;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.List;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.infra.IterationParams;
import org.openjdk.jmh.profile.InternalProfiler;
import org.openjdk.jmh.results.AggregationPolicy;
import org.openjdk.jmh.results.IterationResult;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.ScalarResult;

/** Processor time of one operation, collector and compiler included: what a busy machine does not blur. */
public final class CpuTime implements InternalProfiler {

    static final String MILLISECONDS = "cpu.ms";
    private static final double NANOSECONDS = 1e6;

    private final OperatingSystemMXBean system = ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);
    private long before;

    @Override
    public String getDescription() {
        return "processor time per operation";
    }

    @Override
    public void beforeIteration(BenchmarkParams benchmark, IterationParams iteration) {
        before = system.getProcessCpuTime();
    }

    @Override
    @SuppressWarnings("rawtypes") // Why: the harness declares its results raw.
    public List<Result> afterIteration(BenchmarkParams benchmark, IterationParams iteration, IterationResult result) {
        double spent = (system.getProcessCpuTime() - before) / NANOSECONDS;
        long operations = Math.max(1, result.getMetadata().getAllOps());
        return List.of(new ScalarResult(MILLISECONDS, spent / operations, "ms/op", AggregationPolicy.AVG));
    }
}
