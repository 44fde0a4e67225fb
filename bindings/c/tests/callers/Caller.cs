// The C library from C#, through its platform calls.
using System;
using System.Runtime.InteropServices;
using System.Text;

static class Caller
{
    const string Library = "libaxlewright.so.@ABI@";

    [DllImport(Library)] static extern UIntPtr axw_last_message(byte[] buffer, UIntPtr size);
    [DllImport(Library)] static extern int axw_text_read(byte[] text, byte[] quantity, out double si);
    [DllImport(Library)] static extern int axw_text_print(double si, byte[] quantity, int system, byte[] buffer, UIntPtr size, out UIntPtr needed);
    [DllImport(Library)] static extern int axw_spring_wheel_rate(double spring_rate, double motion_ratio, double angle, out double result);
    [DllImport(Library)] static extern int axw_spring_wheel_rate_n(UIntPtr n, double[] spring_rate, double[] motion_ratio, double[] angle,
        double[] result, int[] reason);
    [DllImport(Library)] static extern double axw_spring_wheel_rate_value(double spring_rate, double motion_ratio, double angle);
    [DllImport(Library)] static extern int axw_engine_torque_curve_new(byte[] text, out IntPtr curve);
    [DllImport(Library)] static extern double axw_engine_torque_curve_torque_value(IntPtr curve, double engine_speed);
    [DllImport(Library)] static extern void axw_engine_torque_curve_free(IntPtr curve);
    [DllImport(Library)] static extern int axw_sheet_new(byte[] text, out IntPtr sheet);
    [DllImport(Library)] static extern void axw_sheet_free(IntPtr sheet);
    [DllImport(Library)] static extern int axw_assessment_new(IntPtr sheet, out IntPtr assessment);
    [DllImport(Library)] static extern int axw_assessment_find(IntPtr assessment, byte[] path, out UIntPtr finding);
    [DllImport(Library)] static extern int axw_assessment_answer(IntPtr assessment, UIntPtr finding, out int verdict, IntPtr value, IntPtr limit,
        IntPtr other, out double margin, IntPtr wanted, IntPtr uncertainty);
    [DllImport(Library)] static extern void axw_assessment_free(IntPtr assessment);
    [DllImport(Library)] static extern UIntPtr axw_function_count();
    [DllImport(Library)] static extern IntPtr axw_function_name(UIntPtr place);
    [DllImport(Library)] static extern int axw_function_describe(byte[] function, byte[] buffer, UIntPtr size, out UIntPtr needed);

    static int passed, failed;

    static byte[] C(string text) { return Encoding.UTF8.GetBytes(text + "\0"); }

    static string Text(byte[] buffer)
    {
        return Encoding.UTF8.GetString(buffer, 0, Array.IndexOf(buffer, (byte)0));
    }

    static string Message()
    {
        var buffer = new byte[1000];
        axw_last_message(buffer, (UIntPtr)buffer.Length);
        return Text(buffer);
    }

    static void Check(bool holds, string what)
    {
        if (holds) { passed++; return; }
        failed++;
        Console.WriteLine(what);
    }

    static void Ok(int status) { Check(status == 0, "status " + status + ": " + Message()); }

    static int Main()
    {
        // A function, and text with its unit.
        double rate;
        UIntPtr needed;
        var shown = new byte[40];
        Ok(axw_text_read(C("300 lbf/in"), C("linear stiffness"), out rate));
        Ok(axw_spring_wheel_rate(rate, 0.62, 0.0, out rate));
        Ok(axw_text_print(rate, C("linear stiffness"), 0, shown, (UIntPtr)shown.Length, out needed));
        Check(Text(shown) == "20.2 N/mm", Text(shown));
        // An array with a row that is refused.
        var rates = new double[2];
        var reasons = new int[2];
        int status = axw_spring_wheel_rate_n((UIntPtr)2, new[] { 50000.0, 50000.0 }, new[] { 0.6, 62.0 }, new[] { 0.0, 0.0 }, rates, reasons);
        Check(status == 104 && reasons[0] == 0 && reasons[1] == 1 && double.IsNaN(rates[1]), "the array");
        Check(rates[0] == axw_spring_wheel_rate_value(50000.0, 0.6, 0.0), "the array and the value");
        // An error and its message.
        Check(axw_spring_wheel_rate(50000.0, 62.0, 0.0, out rate) == 1 && Message().Contains("motion_ratio = 62"), Message());
        // A model of JSON text.
        IntPtr curve;
        Ok(axw_engine_torque_curve_new(C("{\"points\": [{\"engine_speed\": \"1000 rpm\", \"torque\": \"210 N*m\"}, {\"engine_speed\": \"2800 rpm\", \"torque\": \"360 N*m\"}]}"), out curve));
        Check(Math.Abs(axw_engine_torque_curve_torque_value(curve, 2800 * 2 * Math.PI / 60) - 360) < 1e-9, "the torque");
        axw_engine_torque_curve_free(curve);
        // A sheet and its assessment.
        IntPtr sheet, assessment;
        UIntPtr finding;
        int verdict;
        double margin;
        Ok(axw_sheet_new(C("version = 1\n[front]\nsprung_mass = \"545 kg\"\n[front.spring]\nrate = \"550 lbf/in +/- 3 %\"\nmotion_ratio = 0.6\n"
            + "[front.wanted]\nfrequency_low = \"1.2 Hz\"\nfrequency_high = \"1.5 Hz\"\n"), out sheet));
        Ok(axw_assessment_new(sheet, out assessment));
        Ok(axw_assessment_find(assessment, C("front.frequency"), out finding));
        Ok(axw_assessment_answer(assessment, finding, out verdict, IntPtr.Zero, IntPtr.Zero, IntPtr.Zero, out margin, IntPtr.Zero, IntPtr.Zero));
        Check(Math.Abs(margin - 0.069) < 5e-4, "margin " + margin);
        axw_assessment_free(assessment);
        axw_sheet_free(sheet);
        // All functions at run time.
        bool found = false;
        ulong count = (ulong)axw_function_count();
        for (ulong place = 0; place < count; place++)
            found |= Marshal.PtrToStringAnsi(axw_function_name((UIntPtr)place)) == "spring.wheel_rate";
        Check(found && axw_function_name((UIntPtr)count) == IntPtr.Zero, "the names of the functions");
        var told = new byte[8192];
        Ok(axw_function_describe(C("spring.wheel_rate"), told, (UIntPtr)told.Length, out needed));
        Check(Text(told).Contains("\"motion_ratio\""), "the description of a function");
        Console.WriteLine(passed + " passed, " + failed + " failed");
        return failed == 0 ? 0 : 1;
    }
}
