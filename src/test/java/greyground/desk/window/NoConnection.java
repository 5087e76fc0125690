package greyground.desk.window;

import greyground.cli.CommandLine;
import java.io.IOException;
import java.net.Socket;
import java.nio.file.Path;
import java.security.Permission;

/**
 * Runs the main job, a reading, a proof and the window under a guard that lets no connection be made and says who tried: arguments FOLDER and
 * the project's own folder. Ends
 * in the window, which closes itself once it shows its art.
 */
final class NoConnection {
    private NoConnection() {}

    // The one guard that sees every way to the network; newer Javas have none, and the test is left out there.
    @SuppressWarnings("removal")
    public static void main(String[] arguments) throws Exception {
        System.setSecurityManager(new Guard());
        proveTheGuard();
        Path folder = Path.of(arguments[0]);
        Path project = Path.of(arguments[1]);
        Path scene = project.resolve("testimages/leaf-alpha.png");
        Path film = folder.resolve("film.pdf");
        run("positive", scene, "--plate", "40x30mm", "--resolution", "720", "--out", film);
        run("plan", film);
        run("proof", film, "--diagram", folder.resolve("tones.svg"));
        run(
                "read",
                "--film",
                folder.resolve("strip.csv"),
                "--wedge",
                project.resolve("src/test/resources/greyground/fuzz/film/seeds/positive.pdf"),
                "--workshop",
                folder.resolve("shop.json"),
                "--accept");
        DeskSmoke.main(new String[] {scene.toString()});
    }

    private static void proveTheGuard() throws IOException {
        try (Socket socket = new Socket("192.0.2.1", 9)) {
            System.out.println("no guard: " + socket);
        } catch (SecurityException guarded) {
            System.out.println("guarded");
        }
    }

    private static void run(Object... words) {
        String[] line = new String[words.length];
        for (int i = 0; i < words.length; i++) {
            line[i] = words[i].toString();
        }
        System.out.println(words[0] + " " + CommandLine.run(line, System.err, System.out));
    }

    @SuppressWarnings("removal")
    private static final class Guard extends SecurityManager {
        @Override
        public void checkPermission(Permission wanted) {
            // Everything else is allowed.
        }

        @Override
        public void checkPermission(Permission wanted, Object context) {
            // Everything else is allowed.
        }

        @Override
        public void checkConnect(String host, int port) {
            refuse(host, port);
        }

        @Override
        public void checkConnect(String host, int port, Object context) {
            refuse(host, port);
        }

        @Override
        public void checkListen(int port) {
            refuse("listening", port);
        }

        @Override
        public void checkAccept(String host, int port) {
            refuse(host, port);
        }

        private static void refuse(String host, int port) {
            boolean ours = host.equals("192.0.2.1");
            if (!ours) {
                System.out.println("tried " + host + " " + port);
            }
            throw new SecurityException(host);
        }
    }
}
