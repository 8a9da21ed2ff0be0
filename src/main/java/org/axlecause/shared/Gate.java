package org.axlecause.shared;

import java.lang.reflect.Method;
import org.jspecify.annotations.Nullable;

/** Decides who comes in, before a request's body is read; refuses by {@link RefusedException}. */
public interface Gate {

    /**
     * Admits the bearer of this {@code Authorization} header, or without one of this session of the pages, to the method
     * that answers the route, or refuses. What the bearer may still ask for comes back, null where nothing is counted; with
     * an exceeded quota nobody is admitted.
     */
    @Nullable
    Quota admit(@Nullable String authorization, @Nullable String session, Class<?> resource, Method method);
}
