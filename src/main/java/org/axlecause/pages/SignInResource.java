package org.axlecause.pages;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.NewCookie;
import jakarta.ws.rs.core.Response;
import org.axlecause.access.Needs;
import org.axlecause.access.Sessions;
import org.axlecause.shared.ForStrangers;
import org.axlecause.shared.Page;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.RefusedException.Reason;
import org.axlecause.shared.SeeOther;
import org.axlecause.shared.Visit;
import org.jspecify.annotations.Nullable;

/** Signing in with an access key or a person's token, and out again. */
@Page
@Path("/")
@Produces(MediaType.TEXT_HTML)
public class SignInResource {

    private static final String START = "/";
    private static final String LOCAL = "/[A-Za-z0-9][A-Za-z0-9/._~?&=%+-]*";

    private final Sessions sessions;
    private final Frames frames;
    private final Forms forms;
    private final Visit visit;

    SignInResource(Sessions sessions, Frames frames, Forms forms, Visit visit) {
        this.sessions = sessions;
        this.frames = frames;
        this.forms = forms;
        this.visit = visit;
    }

    @GET
    @Path("/sign-in")
    @ForStrangers
    public Response ask(@QueryParam("to") @Nullable String to) {
        return sessions.areNeeded()
                ? Response.ok(Pages.signIn(frames.of(""), local(to), null).render())
                        .build()
                : SeeOther.to(local(to)).build();
    }

    @POST
    @Path("/sign-in")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @ForStrangers
    public Response signIn(MultivaluedMap<String, String> fields) {
        Form form = forms.received(fields);
        String to = local(form.text("to"));
        try {
            return SeeOther.to(to)
                    .cookie(cookie(sessions.begin(form.text("key")), (int)
                            sessions.length().toSeconds()))
                    .build();
        } catch (RefusedException refused) {
            return Response.status(Reason.NOT_AUTHENTICATED.status())
                    .entity(Pages.signIn(frames.of(""), to, refused.getMessage())
                            .render())
                    .build();
        }
    }

    @POST
    @Path("/sign-out")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Needs
    public Response signOut(MultivaluedMap<String, String> fields) {
        forms.received(fields);
        return SeeOther.to("/sign-in").cookie(cookie("", 0)).build();
    }

    private NewCookie cookie(String session, int seconds) {
        return new NewCookie.Builder(Visit.SESSION)
                .value(session)
                .path("/")
                .maxAge(seconds)
                .httpOnly(true)
                .secure(visit.secure())
                .sameSite(NewCookie.SameSite.STRICT)
                .build();
    }

    /** An address of ours; nobody is sent elsewhere after signing in. */
    private static String local(@Nullable String to) {
        return to != null && to.matches(LOCAL) ? to : START;
    }
}
