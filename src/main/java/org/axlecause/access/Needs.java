package org.axlecause.access;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Which roles may use a route; one of them, or admin, is enough. A route without it lets nobody in. */
@Retention(RetentionPolicy.RUNTIME)
@Target({ElementType.METHOD, ElementType.TYPE})
public @interface Needs {

    /** Every role of the tenant. */
    Role[] value() default {Role.SENDER, Role.TECHNICIAN, Role.DESK, Role.POLICY, Role.ANALYST, Role.ADMIN};
}
