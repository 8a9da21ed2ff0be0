package org.axlecause.bench;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** What a benchmark has to reach, in the unit it reports; the table says whether it did. */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
public @interface Goal {

    /** The score must stay below this; with throughput, above it. */
    double value();

    /** Name of the benchmark of the same class and parameters whose score the value is a share of; left out for none. */
    String of() default "";
}
